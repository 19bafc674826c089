import type { Interval } from '../model/calendar/interval.ts';
import type { CatalogueSource, IntervalRow, RowCountry } from '../schema/catalogue.ts';
import type { FieldCountry } from '../schema/codes.ts';
import { type MeasuredRow, measureRow, rankDays, sayInterval } from './intervalLength.ts';
import type { ReachingRow } from './rowsOfPair.ts';
import { titleOf } from './titleOf.ts';

const COUNTRY_WORDS: Readonly<Record<RowCountry, string>> = {
  US: 'the United States',
  CA: 'Canada',
  AU: 'Australia',
  other: 'other countries',
};

/** What stands beside a chosen interval and never in its place. */
export interface Evidence {
  readonly longerElsewhere: readonly { readonly row: IntervalRow; readonly interval: Interval }[];
  readonly elsewhere: readonly string[];
}

/**
 * Evidence beside the interval chosen for a pair: field findings and advice that ask for longer, what labels of other
 * countries say, and what ready mixes of the field's own country say where that is longer.
 */
export function evidenceBeside(
  pair: readonly ReachingRow[],
  country: FieldCountry,
  counting: readonly IntervalRow[],
  chosen: Interval,
): Evidence {
  const named = pair.filter(({ reach }) => reach !== 'unnamed crops').map(({ row }) => row);
  const isLonger = ({ longest }: MeasuredRow) => rankDays(longest) > rankDays(chosen);
  const mixes = measuredOf(
    named.filter(
      (row) =>
        row.kind === 'label' &&
        row.country === country &&
        row.partners.length > 0 &&
        row.variety !== 'tolerant' &&
        !counting.includes(row),
    ),
  ).filter(isLonger);
  return {
    longerElsewhere: longerFindings(pair, chosen),
    elsewhere: [
      ...(mixes.length > 0
        ? [`Ready mixes with it ask for longer: ${sayRange(mixes)}. Read the label of the mix you use.`]
        : []),
      ...intervalsElsewhere(pair, country),
    ],
  };
}

/** One sentence for each other country whose labels give a length for the pair. */
export function intervalsElsewhere(pair: readonly ReachingRow[], country: FieldCountry): string[] {
  const others = measuredOf(
    pair
      .filter(
        ({ reach, row }) => reach !== 'unnamed crops' && row.kind === 'label' && row.country !== country,
      )
      .filter(({ row }) => row.variety !== 'tolerant')
      .map(({ row }) => row),
  );
  return (Object.keys(COUNTRY_WORDS) as RowCountry[]).flatMap((other) => {
    const rows = others.filter(({ row }) => row.country === other);
    const memory = rows.every(({ row }) => row.mark === 'from memory') ? ', from memory' : '';
    return rows.length === 0
      ? []
      : [
          `Labels of ${COUNTRY_WORDS[other]} give ${sayRange(rows)}${memory}; they set no date for your field.`,
        ];
  });
}

/** Field findings and advice on a pair that ask for longer than an interval, where no label row is chosen. */
export const longerFindings = (pair: readonly ReachingRow[], than: Interval): Evidence['longerElsewhere'] =>
  measuredOf(
    pair.flatMap(({ reach, row }) => (row.kind === 'label' || reach === 'unnamed crops' ? [] : [row])),
  )
    .filter(({ longest }) => rankDays(longest) > rankDays(than))
    .map(({ row, longest }) => ({ row, interval: longest }));

/** A field finding or piece of advice that asks for longer, in one sentence with its source's title. */
export const sayFinding = (
  { row, interval }: Evidence['longerElsewhere'][number],
  sources: readonly CatalogueSource[],
): string =>
  `Beside the label: ${row.kind === 'advice' ? 'advice' : 'a field finding'} from ${row.region} asks for ${sayInterval(interval)} or more (${titleOf(row.source, sources)}).`;

const measuredOf = (rows: readonly IntervalRow[]): MeasuredRow[] =>
  rows.map(measureRow).filter((one) => one !== null);

function sayRange(rows: readonly MeasuredRow[]): string {
  const low = rows.reduce(
    (best, { shortest }) => (rankDays(shortest) < rankDays(best) ? shortest : best),
    rows[0].shortest,
  );
  const high = rows.reduce(
    (best, { longest }) => (rankDays(longest) > rankDays(best) ? longest : best),
    rows[0].longest,
  );
  return rankDays(low) === rankDays(high) ? sayInterval(high) : `${sayInterval(low)} to ${sayInterval(high)}`;
}
