import { OddsChip } from '../../answer/OddsChip.tsx';
import { oddsWord } from '../../answer/oddsInWords.ts';
import type { Batch } from '../../api/contract.ts';
import { areaText, type Units } from '../../units/units.ts';
import { useDates } from '../../units/useDates.ts';
import { CellName } from '../FieldTable.tsx';

/** Rows drawn; the files hold all of them. */
const SHOWN = 100;

type Row = Batch['rows'][number];
type Answered = Row & { readonly answer: NonNullable<Row['answer']> };

/** The answered rows of a list, most area at risk first. */
export function RankedRows({ rows, units }: { rows: Batch['rows']; units: Units }) {
  const answered = rows.filter((row): row is Answered => row.answer !== null);
  if (answered.length === 0) return null;
  const { short } = useDates();
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reached by keyboard */}
      <section class="table-scroll fixed-first" tabIndex={0} aria-label="The list by area at risk, a table">
        <table class="fields">
          <thead>
            <tr>
              <th scope="col">Field</th>
              <th scope="col">Area at risk</th>
              <th scope="col">Odds in 20</th>
              <th scope="col">Label date</th>
              <th scope="col">Clear date</th>
            </tr>
          </thead>
          <tbody>
            {answered.slice(0, SHOWN).map(({ line, given, areaHectares, hectaresAtRisk, answer }) => (
              <tr key={line} data-testid="list-row">
                <th scope="row">
                  {given.field || `Line ${line}`}
                  <small>
                    {[given.crop, areaHectares === null ? 'no area' : areaText(areaHectares, units)]
                      .filter(Boolean)
                      .join(', ')}
                  </small>
                </th>
                <td>
                  <CellName name="Area at risk" />
                  {hectaresAtRisk === null ? '–' : areaText(hectaresAtRisk, units)}
                </td>
                <td>
                  <CellName name="Odds in 20" />
                  {answer.oddsAtPlanting === null ? (
                    'not reckoned'
                  ) : (
                    <>
                      <OddsChip odds={answer.oddsAtPlanting} />
                      <small>{oddsWord(answer.oddsAtPlanting)}</small>
                    </>
                  )}
                </td>
                <td>
                  <CellName name="Label date" />
                  {short(answer.labelDate)}
                  {!answer.intervalConfirmed && <small>not from your label</small>}
                </td>
                <td>
                  <CellName name="Clear date" />
                  {answer.clearDate === null ? 'none found' : short(answer.clearDate)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {answered.length > SHOWN && (
        <p class="small">
          The first {SHOWN} of {answered.length.toLocaleString('en-US')} are shown; the files hold all.
        </p>
      )}
    </>
  );
}
