import { TableRoom } from '../answer/TableRoom.tsx';

const ROWS = ['Never sprayed, to compare', 'Ordinary ground', 'Risky ground', 'Turn rows'];
const COLUMNS = ['Soil taken on', 'Sown on', 'Came up', 'Read on', 'Hurt? How'];

/** Room to write down what was found, by pen. */
export function RecordTable() {
  return (
    <section class="guide-record">
      <h2>To write down</h2>
      <TableRoom label="to write down">
        <table>
          <thead>
            <tr>
              <th scope="col">Soil from</th>
              {COLUMNS.map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {ROWS.map((name) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {COLUMNS.map((column) => (
                  <td key={column} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableRoom>
    </section>
  );
}
