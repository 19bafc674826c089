import { OddsChip } from '../answer/OddsChip.tsx';
import { TableRoom } from '../answer/TableRoom.tsx';
import type { Answer } from '../api/contract.ts';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';

/** Each species of a mix, judged by itself; the most restricted one rules. */
export function MixTable({ mix, plantOn }: { mix: Answer['mix']; plantOn: string }) {
  const dates = useDates();
  if (mix.length === 0) return null;
  const ruling = mix.find(({ rules }) => rules)?.crop;
  return (
    <TableRoom label="species of the mix">
      <table class="wide" data-testid="mix">
        <caption>
          <span class="caption-words">
            {ruling
              ? `Of the mix, ${ruling} rules: the others would be let in sooner.`
              : 'The species of the mix.'}
          </span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Species</th>
            <th scope="col">Interval</th>
            <th scope="col">
              <Term name="label date" />
            </th>
            <th scope="col" class="number">
              Odds, in 20
            </th>
            <th scope="col">
              <Term name="clear date" />
            </th>
          </tr>
        </thead>
        <tbody>
          {mix.map(({ crop, interval, labelDate, clearDate, oddsAtPlanting, rules }) => (
            <tr key={crop} data-rules={rules ? '' : undefined}>
              <th scope="row">
                {crop}
                {rules && <span class="tag">rules</span>}
              </th>
              <td>{interval}</td>
              <td>{dates.near(labelDate, plantOn)}</td>
              <td class="number">{oddsAtPlanting === null ? 'none' : <OddsChip odds={oddsAtPlanting} />}</td>
              <td>{clearDate === null ? 'not in the search' : dates.near(clearDate, plantOn)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}
