import { rangeWords } from '../../../src/chart/saidWords.ts';
import { OddsChip } from '../answer/OddsChip.tsx';
import { keepTogether, oddsWord } from '../answer/oddsInWords.ts';
import type { FieldAnswer, Problem, StoredField } from '../api/contract.ts';
import { areaText, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { useWorded } from '../units/useWorded.ts';
import { fieldAddress } from './fieldsAddress.ts';
import { nextPlan, today } from './nextPlan.ts';
import type { AnswersByField } from './useFieldAnswers.ts';

interface FieldTableProps {
  readonly farm: string;
  readonly fields: readonly StoredField[];
  readonly answers: AnswersByField;
  readonly stationNames: ReadonlyMap<string, string>;
  readonly units: Units;
}

/** The fields of one farm, each with its next crop and how that stands. */
export function FieldTable({ farm, fields, answers, stationNames, units }: FieldTableProps) {
  const dates = useDates();
  const title = farm === '' ? 'Fields without a farm' : farm;
  return (
    <section class="farm">
      <h2>{title}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reached by keyboard */}
      <section class="table-scroll fixed-first" tabIndex={0} aria-label={`${title}, a table`}>
        <table class="fields">
          <thead>
            <tr>
              <th scope="col">Field</th>
              <th scope="col">Next crop</th>
              <th scope="col">Odds in 20</th>
              <th scope="col">Label date</th>
              <th scope="col">Clear date</th>
            </tr>
          </thead>
          <tbody>
            {fields.map(({ record }) => {
              const plan = nextPlan(record.plans, today());
              const about = [
                record.areaHa === null ? null : areaText(record.areaHa, units),
                record.station === null
                  ? 'no station yet'
                  : (stationNames.get(record.station) ?? record.station),
              ].filter((part) => part !== null);
              return (
                <tr key={record.id} data-testid="field-row">
                  <th scope="row">
                    <a href={fieldAddress(record.id)}>{record.name}</a>
                    <small>{about.join(', ')}</small>
                  </th>
                  {plan === null ? (
                    <td colSpan={4} class="faint">
                      No crop is planned yet.
                    </td>
                  ) : (
                    <>
                      <td>
                        <CellName name="Next crop" />
                        {plan.crop}
                        <small>planting {dates.full(plan.plantOn)}</small>
                      </td>
                      <AnswerCells answer={answerTo(plan.id, answers.get(record.id))} />
                    </>
                  )}
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
    </section>
  );
}

/** The answer to one plan, or why there is none; null before it has come. */
function answerTo(planId: string, known: readonly FieldAnswer[] | Problem | undefined) {
  if (known === undefined) return null;
  return 'message' in known ? known : (known.find((one) => one.planId === planId) ?? null);
}

/** How one planned crop stands; without an answer, why not. */
function AnswerCells({ answer }: { answer: FieldAnswer | Problem | null }) {
  const { short } = useDates();
  const worded = useWorded();
  if (answer === null) return <td colSpan={3}>Asking…</td>;
  const problem = 'message' in answer ? answer : answer.problem;
  if ('message' in answer || problem !== undefined) {
    return (
      <td colSpan={3} class="faint">
        {problem && worded(problem).message}
      </td>
    );
  }
  const { oddsAtPlanting, oddsRange, labelDate, clearDate } = answer;
  return (
    <>
      <td>
        <CellName name="Odds in 20" />
        {oddsAtPlanting === null ? (
          'not reckoned'
        ) : (
          <>
            <OddsChip odds={oddsAtPlanting} />
            <small>{oddsWord(oddsAtPlanting)}</small>
            {oddsRange && (
              <small class="odds-range" data-testid="field-odds-range">
                {keepTogether(rangeWords(oddsRange))} seasons and soils like this, by {oddsRange.years} years
              </small>
            )}
          </>
        )}
      </td>
      <td>
        <CellName name="Label date" />
        {labelDate === null ? 'none' : short(labelDate)}
      </td>
      <td>
        <CellName name="Clear date" />
        {clearDate === null ? 'none found' : short(clearDate)}
      </td>
    </>
  );
}

/** The head of the column, where a small screen shows the row as a block. */
export const CellName = ({ name }: { name: string }) => <span class="cell-name">{name} </span>;
