import { MissingDataError } from '../errors.ts';
import type { Interval } from '../model/calendar/interval.ts';
import type { Active, Catalogue, Crop, IntervalRow } from '../schema/catalogue.ts';
import type { FieldCountry } from '../schema/codes.ts';
import { evidenceBeside, intervalsElsewhere, longerFindings, sayFinding } from './evidenceBeside.ts';
import { isAtLeast, type MeasuredRow, measureRow, rankDays, sayInterval } from './intervalLength.ts';
import { type ReachingRow, rowsOfPair } from './rowsOfPair.ts';
import { titleOf } from './titleOf.ts';

/** The catalogue's label interval for a pair, with all that stands behind it. */
export interface ChosenInterval extends Interval {
  /** The interval as labels write it. */
  readonly text: string;
  /** The row that set it, and the title of its source. */
  readonly chosen: IntervalRow;
  readonly sourceTitle: string;
  /** The rows that may set it, in the order of the file. */
  readonly counting: readonly IntervalRow[];
  /** Every row that speaks of the pair, those without a length included. */
  readonly rows: readonly IntervalRow[];
  /** Field findings and advice that ask for longer than the label does: shown beside it, never in its place. */
  readonly longerElsewhere: readonly { readonly row: IntervalRow; readonly interval: Interval }[];
  /** One sentence for each other country's labels, and one for ready mixes: shown, never in its place. */
  readonly elsewhere: readonly string[];
  /** All that stands beside it, one sentence each: other countries, ready mixes, findings and advice. */
  readonly besideInWords: readonly string[];
  /** A sentence where no row names the crop with this active alone, and which rows stand in; else null. */
  readonly fallBack: string | null;
  /** True where the chosen row rests on memory. */
  readonly fromMemory: boolean;
  /** True where the source says "at least this long". */
  readonly atLeast: boolean;
  /** True where some row that counts asks for a field bioassay. */
  readonly bioassay: boolean;
  /** A sentence where the rows do not agree, else null. */
  readonly disagreement: string | null;
}

/** Rows that may set the date, in order: the first of these that has any decides. */
const TIERS: readonly {
  readonly holds: (one: ReachingRow) => boolean;
  readonly fallBack: ((crop: string, row: IntervalRow) => string) | null;
}[] = [
  { holds: ({ reach, row }) => reach === 'crop' && isAlone(row), fallBack: null },
  {
    holds: ({ reach, row }) => reach === 'group' && isAlone(row),
    fallBack: (crop, row) => `No row names ${crop}; the line for ${row.crop} stands in for it.`,
  },
  {
    holds: ({ reach, row }) => reach !== 'unnamed crops' && !isAlone(row),
    fallBack: (crop, row) =>
      `No row has ${row.active} by itself before ${crop}; a ready mix with ${row.partners.join(' and ')} stands in for it.`,
  },
  {
    holds: ({ reach }) => reach === 'unnamed crops',
    fallBack: (crop, row) =>
      `No row names ${crop}; the label’s line for crops that it does not name stands in for it` +
      `${isAlone(row) ? '' : `, of a ready mix with ${row.partners.join(' and ')}`}. Your label may name ${crop}.`,
  },
];

const isAlone = ({ partners }: IntervalRow): boolean => partners.length === 0;

/**
 * The rotation interval of an active and a crop for a field in one country: the longest that any label row of that
 * country gives. Field findings, advice, rows of other countries and rows for tolerant varieties never set it.
 * @param without numbers of rows that another line of their own source takes the place of
 * @throws {MissingDataError} INTERVAL_MISSING where no such row gives a length
 * @example chooseInterval(catalogue, findActive(catalogue, 'imazethapyr'), findCrop(catalogue, 'canola')).months // 40
 */
export function chooseInterval(
  catalogue: Catalogue,
  active: Active,
  crop: Crop,
  country: FieldCountry = 'US',
  without: ReadonlySet<number> = new Set(),
): ChosenInterval {
  const pair = rowsOfPair(catalogue, active, crop);
  const choices = known.get(pair) ?? new Map<string, Choice>();
  known.set(pair, choices);
  const key = without.size === 0 ? country : `${country} ${[...without].join(' ')}`;
  const choice = choices.get(key) ?? choose(pair, catalogue, active, crop, country, without);
  choices.set(key, choice);
  if (choice instanceof MissingDataError) throw choice;
  return choice;
}

/** A refusal is kept too: a comparison meets hundreds, and making one costs more than the rest of a choice. */
type Choice = ChosenInterval | MissingDataError;

/** Choices by the rows of their pair, which are looked for once and never change. */
const known = new WeakMap<readonly ReachingRow[], Map<string, Choice>>();

function choose(
  pair: readonly ReachingRow[],
  catalogue: Catalogue,
  active: Active,
  crop: Crop,
  country: FieldCountry,
  without: ReadonlySet<number>,
): Choice {
  const { tier, counting } = countingOf(pair, country);
  const measured = counting
    .filter(({ rowId }) => !without.has(rowId))
    .map(measureRow)
    .filter((one) => one !== null);
  const [first, ...others] = measured;
  if (tier === undefined || first === undefined) {
    return missing(active, crop, counting, pair, [
      ...intervalsElsewhere(pair, country),
      ...longerFindings(pair, { months: 0, days: 0 }).map((one) => sayFinding(one, catalogue.sources)),
    ]);
  }

  const winner = others.reduce((best, next) => (outranks(next, best) ? next : best), first);
  const rows = pair
    .filter(({ reach, row }) => reach !== 'unnamed crops' || counting.includes(row))
    .map(({ row }) => row);
  const { longerElsewhere, elsewhere } = evidenceBeside(pair, country, counting, winner.longest);
  return {
    ...winner.longest,
    text: sayInterval(winner.longest),
    chosen: winner.row,
    sourceTitle: titleOf(winner.row.source, catalogue.sources),
    counting,
    rows,
    longerElsewhere,
    elsewhere,
    besideInWords: [...elsewhere, ...longerElsewhere.map((one) => sayFinding(one, catalogue.sources))],
    fallBack: tier.fallBack?.(crop.name, winner.row) ?? null,
    fromMemory: winner.row.mark === 'from memory',
    atLeast: isAtLeast(winner.row),
    bioassay: counting.some(({ bioassay }) => bioassay === 'yes'),
    disagreement: disagreementOf(measured, winner, active, crop),
  };
}

/** The label rows of a pair that may set a date for a field in one country, those without a length included. */
export const countingRows = (
  catalogue: Catalogue,
  active: Active,
  crop: Crop,
  country: FieldCountry,
): readonly IntervalRow[] => countingOf(rowsOfPair(catalogue, active, crop), country).counting;

interface CountingRows {
  /** The tier that decides; undefined where no row may. */
  readonly tier: (typeof TIERS)[number] | undefined;
  readonly counting: readonly IntervalRow[];
}

/** Rows that count by the rows of their pair and the field's country. */
const knownCounting = new WeakMap<readonly ReachingRow[], Map<FieldCountry, CountingRows>>();

function countingOf(pair: readonly ReachingRow[], country: FieldCountry): CountingRows {
  const byCountry = knownCounting.get(pair) ?? new Map<FieldCountry, CountingRows>();
  knownCounting.set(pair, byCountry);
  const found = byCountry.get(country) ?? lookThrough(pair, country);
  byCountry.set(country, found);
  return found;
}

function lookThrough(pair: readonly ReachingRow[], country: FieldCountry): CountingRows {
  const labels = pair.filter(
    ({ row }) => row.kind === 'label' && row.country === country && row.variety !== 'tolerant',
  );
  const tier = TIERS.find(({ holds }) => labels.some(holds));
  return { tier, counting: tier ? labels.filter(tier.holds).map(({ row }) => row) : [] };
}

function disagreementOf(
  measured: readonly MeasuredRow[],
  winner: MeasuredRow,
  active: Active,
  crop: Crop,
): string | null {
  const { shortest } = measured.reduce((best, next) =>
    rankDays(next.shortest) < rankDays(best.shortest) ? next : best,
  );
  const agree = measured.every(
    ({ shortest: low, longest }) =>
      rankDays(low) === rankDays(longest) && rankDays(longest) === rankDays(winner.longest),
  );
  if (agree) return null;
  return (
    `${measured.length === 1 ? 'The source gives' : 'Sources give'} ${sayInterval(shortest)} to ` +
    `${sayInterval(winner.longest)} from ${active.isoName} to ${crop.name}; the longest is used.`
  );
}

/** Longer wins; of equals "at least", then one that does not rest on memory. */
function outranks(next: MeasuredRow, best: MeasuredRow): boolean {
  const byLength = rankDays(next.longest) - rankDays(best.longest);
  if (byLength !== 0) return byLength > 0;
  const trust = ({ row }: MeasuredRow) => (isAtLeast(row) ? 2 : 0) + (row.mark === 'from memory' ? 0 : 1);
  return trust(next) > trust(best);
}

function missing(
  active: Active,
  crop: Crop,
  counting: readonly IntervalRow[],
  pair: readonly ReachingRow[],
  elsewhere: readonly string[],
): MissingDataError {
  const names = `from ${active.isoName} to ${crop.name}`;
  const bioassayDecides = counting.some(({ bioassay }) => bioassay === 'yes');
  const message = bioassayDecides
    ? `No label interval is known ${names}: the source gives no length and asks for a field bioassay. Read your label.`
    : `No label interval is known ${names}: read your label.`;
  return new MissingDataError('INTERVAL_MISSING', [message, ...elsewhere].join(' '), {
    hint: 'Add your label\'s interval with --interval, for example --interval "9 months".',
    details: {
      field: 'interval',
      active: active.isoName,
      crop: crop.name,
      bioassay: bioassayDecides,
      rows: pair.map(({ row }) => row.rowId),
    },
  });
}
