import type { CropGrid, CropRow } from '../api/contract.ts';
import type { Column } from '../charts/csv.ts';
import type { DateWords } from '../units/dates.ts';
import { YEARS, type Years } from './cropsAddress.ts';
import { isBarred, oddsIn } from './gridView.ts';

const HEADS: Record<Years, string> = { dry: 'dry third', all: 'all years', wet: 'wet third' };

const facts: readonly Column<CropRow>[] = [
  { head: 'Crop', cell: ({ crop }) => crop },
  { head: 'Interval', cell: ({ interval }) => interval.text },
  { head: 'Interval from', cell: ({ interval }) => (interval.fromMemory ? 'memory' : interval.origin) },
  { head: 'Label date', cell: ({ labelDate }) => labelDate, dates: 'day' },
  { head: 'Clear date', cell: ({ clearDate }) => clearDate ?? 'not within the search', dates: 'day' },
];

/** A column for each date and set of years, in percent; "not allowed" before the label date. */
const oddsColumns = (dates: readonly string[], years: Years): Column<CropRow>[] =>
  dates.map((date, index) => ({
    head: `${date}, ${HEADS[years]}, %`,
    headIn: (dates: DateWords) => `${dates.short(date)}, ${HEADS[years]}, %`,
    number: true,
    cell: (row) => {
      if (isBarred(row, date)) return 'not allowed';
      const odds = oddsIn(row, years);
      return odds === null ? 'not reckoned' : (odds[index] * 100).toFixed(1);
    },
  }));

/** The file: every crop, every date, all three sets of years. */
export const fileColumns = (dates: readonly string[]): Column<CropRow>[] => [
  ...facts,
  ...YEARS.flatMap((years) => oddsColumns(dates, years)),
];

/** The table on the page: one set of years. */
export const tableColumns = (dates: readonly string[], years: Years): Column<CropRow>[] => [
  ...facts,
  ...oddsColumns(dates, years),
];

export const cropsStem = ({ residual, question }: CropGrid): string =>
  `drywake-crops-after-${residual}-${question.appliedOn}`.replaceAll(/[^\w.-]+/g, '-');
