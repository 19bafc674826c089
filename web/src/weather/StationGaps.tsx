import type { StationCheck } from '../api/contract.ts';
import { rainText, temperatureText, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';

const many = (count: number) => count.toLocaleString('en-US');
const isRain = (rule: string) => /rain/i.test(rule);

/** The longest gaps, and values that look wrong; nothing is dropped for it. */
export function StationGaps({ check, units }: { check: StationCheck; units: Units }) {
  const dates = useDates();
  const { longestGaps, gapCount, implausible } = check;
  return (
    <div class="gaps">
      <section aria-labelledby="gaps-title">
        <h2 id="gaps-title">
          {gapCount === 0 ? 'No gaps in the rain' : `${many(gapCount)} gaps in the rain`}
        </h2>
        {longestGaps.length > 0 && (
          <table>
            <thead>
              <tr>
                <th scope="col">The longest began</th>
                <th scope="col" class="number">
                  Days
                </th>
              </tr>
            </thead>
            <tbody>
              {longestGaps.map(({ firstDate, days }) => (
                <tr key={firstDate}>
                  <td>{dates.full(firstDate)}</td>
                  <td class="number">{many(days)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </section>
      <section aria-labelledby="odd-title">
        <h2 id="odd-title">{implausible.length === 0 ? 'No value looks wrong' : 'Values that look wrong'}</h2>
        {implausible.map(({ rule, count, shown }) => (
          <div key={rule} class="odd">
            <p>
              {rule}: {many(count)} {count === 1 ? 'time' : 'times'}
              {count > shown.length && ', the latest of them'}
            </p>
            <ul>
              {shown.map(({ date, value }) => (
                <li key={date}>
                  {dates.full(date)}, {isRain(rule) ? rainText(value, units) : temperatureText(value, units)}
                </li>
              ))}
            </ul>
          </div>
        ))}
        <p class="small">
          Found by rules of our own, which look for slips of reading. Nothing is dropped for it.
        </p>
      </section>
    </div>
  );
}
