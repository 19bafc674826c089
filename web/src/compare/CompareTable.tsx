import { oddsStep } from '../../../src/chart/oddsScale.ts';
import { chipText } from '../answer/chipText.ts';
import { ThirdMark } from '../answer/ThirdMark.tsx';
import type { QuestionInput } from '../api/contract.ts';
import { Mark } from '../catalogue/Mark.tsx';
import { encodeAddress } from '../question/address.ts';
import type { DateWords } from '../units/dates.ts';
import type { Units } from '../units/units.ts';
import { Term } from '../words/Term.tsx';
import { isAsked, MOST_PICKS, type NamedRow, withRow } from './compareAddress.ts';
import { sayWeekRange, sayWeeks } from './compareWords.ts';
import { hasSeason } from './picks.ts';
import { nextSort, type Sort, type SortKey, sortRows } from './sortRows.ts';

interface CompareTableProps {
  readonly residuals: readonly NamedRow[];
  readonly question: QuestionInput;
  readonly picks: readonly string[];
  readonly toggle: (residual: string) => void;
  readonly sort: Sort | null;
  readonly sortBy: (sort: Sort | null) => void;
  readonly units: Units;
  readonly dates: DateWords;
}

const HEADS: readonly { key: SortKey; text: string; number?: boolean }[] = [
  { key: 'name', text: 'Residual' },
  { key: 'odds', text: 'Odds, in 20', number: true },
  { key: 'dry', text: 'Dry third', number: true },
  { key: 'weeks', text: 'Weeks of control', number: true },
  { key: 'label', text: 'Label date' },
  { key: 'clear', text: 'Clear date' },
  { key: 'interval', text: 'Interval' },
];

/** All residuals that can be judged, to be sorted by any column; up to three are ticked for the season chart. */
export function CompareTable(props: CompareTableProps) {
  const { residuals, picks, sort, sortBy } = props;
  const rows = sortRows(residuals, sort);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="table-scroll fixed-first" tabIndex={0} aria-label="The residuals, a table">
      <table class="compare-table" data-testid="compare-table">
        <caption>
          <span class="caption-text">
            {sort === null ? 'Those that fit first, then by odds' : 'The residuals'}
            <small>
              {picks.length < MOST_PICKS
                ? 'Tick up to three to see their seasons below.'
                : 'Three are ticked and drawn below; take one off to tick another.'}
            </small>
          </span>
        </caption>
        <thead>
          <tr>
            {HEADS.map(({ key, text, number }) => (
              <th
                key={key}
                scope="col"
                class={number ? 'number' : undefined}
                aria-sort={sort?.key === key ? (sort.descending ? 'descending' : 'ascending') : undefined}
              >
                <button type="button" class="sorter" onClick={() => sortBy(nextSort(sort, key))}>
                  {text}
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Line
              key={row.residual}
              {...props}
              row={row}
              full={picks.length >= MOST_PICKS && !picks.includes(row.residual)}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Line({ row, full, ...props }: CompareTableProps & { row: NamedRow; full: boolean }) {
  const { question, picks, toggle, units, dates } = props;
  const { residual, interval, oddsAtPlanting: odds, thirdOdds, weeksOfControl, halfLife } = row;
  return (
    <tr
      data-own={isAsked(row, question) ? '' : undefined}
      data-memory={interval.fromMemory ? '' : undefined}
      data-ruled-out={row.labelAllows ? undefined : ''}
    >
      <th scope="row">
        <span class="name-cell">
          {hasSeason(row) ? (
            <input
              type="checkbox"
              aria-label={`Season of ${residual}`}
              checked={picks.includes(residual)}
              disabled={full}
              onChange={() => toggle(residual)}
            />
          ) : (
            <span class="no-box" />
          )}
          <span>
            <a href={`/${encodeAddress(withRow(question, row), units)}`}>{residual}</a>
            {row.withinLimit && <small>fits</small>}
            {!row.labelAllows && <small>label rules it out</small>}
          </span>
        </span>
      </th>
      <td class="number">
        {odds === null ? (
          <small>not reckoned</small>
        ) : (
          <>
            <Chip odds={odds} />
            <small class="under">{Math.round(odds * 100)} %</small>
          </>
        )}
      </td>
      <td class="number">
        {thirdOdds && (
          <>
            <ThirdMark third="dry" />
            <Chip odds={thirdOdds.dry} />
          </>
        )}
      </td>
      <td class="number">
        {weeksOfControl === null ? (
          <small>not known</small>
        ) : (
          <>
            {sayWeeks(weeksOfControl.middle)}
            <small class="under">{sayWeekRange(weeksOfControl)}</small>
          </>
        )}
      </td>
      <td>{dates.short(row.labelDate)}</td>
      <td>{row.clearDate === null ? 'none found' : dates.short(row.clearDate)}</td>
      <td class="interval-cell">
        {interval.text}
        <details class="row-sources">
          <summary>
            {interval.origin === 'own label' ? (
              'your label'
            ) : (
              <Mark mark={interval.fromMemory ? 'from memory' : 'seen'} />
            )}
            <span class="unseen">, sources for {residual}</span>
          </summary>
          <p>
            Interval:{' '}
            {interval.origin === 'own label'
              ? 'as you entered it from the label'
              : interval.sources.length === 0
                ? 'from memory, without a source'
                : interval.sources.join('; ')}
            . {interval.disagreement}
          </p>
          <p>
            {halfLife === null
              ? 'No half-life is held.'
              : `Half-life ${Number(halfLife.days.toPrecision(3))} days, ${[halfLife.mark, ...halfLife.sources].join('; ')}.`}
          </p>
        </details>
      </td>
    </tr>
  );
}

/** Odds in 20 on their colour; the ends of the scale as the sentence says them. */
function Chip({ odds }: { odds: number }) {
  return (
    <span class="odds-chip" data-step={oddsStep(odds)}>
      {chipText(odds)}
    </span>
  );
}

/** Explains the columns’ own terms under the table. */
export function TableTerms() {
  return (
    <p class="small">
      <Term name="label date">Label date</Term>, <Term name="clear date">clear date</Term>,{' '}
      <Term name="dry third">dry third</Term>. Weeks run from wet years to dry ones.
    </p>
  );
}
