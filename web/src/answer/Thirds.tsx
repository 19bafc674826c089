import { oddsStep } from '../../../src/chart/oddsScale.ts';
import type { Answer } from '../api/contract.ts';
import { rainNumber, rainUnit, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';
import { TableRoom } from './TableRoom.tsx';
import { ThirdMark } from './ThirdMark.tsx';

/** The answer in dry, middle and wet years. */
export function Thirds({ answer, units }: { answer: Answer; units: Units }) {
  const dates = useDates();
  const { thirds } = answer;
  if (thirds.length === 0) return null;
  return (
    <TableRoom label="dry, middle and wet years">
      <table class="thirds">
        <caption>{thirdsFinding(answer)}</caption>
        <thead>
          <tr>
            <th scope="col">Years</th>
            <th scope="col" class="number">
              <Term name="warm rain" />, {rainUnit(units)}
            </th>
            <th scope="col" class="number">
              Odds, in 20
            </th>
            <th scope="col">
              <Term name="clear date" />
            </th>
            <th scope="col" class="number">
              Days after label
            </th>
          </tr>
        </thead>
        <tbody>
          {thirds.map((third) => (
            <tr key={third.name} data-third={third.name}>
              <th scope="row">
                <ThirdMark third={third.name} /> {third.name}
              </th>
              <td class="number">{rainNumber(third.warmRainMm, units)}</td>
              <td class="number">
                <span class="odds-chip" data-step={oddsStep(third.odds)}>
                  {Math.round(third.odds * 20)}
                </span>
              </td>
              <td>
                {third.clearDate === null
                  ? 'not in the search'
                  : dates.near(third.clearDate, answer.inputs.question.plantOn)}
              </td>
              <td class="number">
                {third.daysAfterLabel === null ? 'none' : Math.round(third.daysAfterLabel)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}

function thirdsFinding({ thirds }: Answer): string {
  const dry = thirds.find(({ name }) => name === 'dry');
  const wet = thirds.find(({ name }) => name === 'wet');
  if (!dry || !wet) return 'Dry, middle and wet years';
  if (dry.medianDaysToClear === null) return 'In half of the dry years it never clears within the search.';
  const late = Math.round(dry.medianDaysToClear - (wet.medianDaysToClear ?? dry.medianDaysToClear));
  if (late <= 0) return 'A dry year clears no later than a wet one here.';
  return `A dry year clears ${late} ${late === 1 ? 'day' : 'days'} later than a wet one.`;
}
