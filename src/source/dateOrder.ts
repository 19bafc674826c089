import { InvalidInputError } from '../errors.ts';
import type { ReadOptions } from '../schema/readOptions.ts';
import { dayNumberIn, yearFirstDay } from './dateText.ts';

type Order = NonNullable<ReadOptions['dates']>;

const YEAR_LAST = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})(?: 0?0:00(?::00)?)?$/;
const YEAR_FIRST_LOOSE = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;

/** A date of a gauge file, as a day number, NaN where it is none; null stands for an order that is not known yet. */
export function gaugeDay(text: string, order: Order | null): number {
  const yearFirst = yearFirstDay(text);
  if (!Number.isNaN(yearFirst)) return yearFirst;
  const loose = YEAR_FIRST_LOOSE.exec(text);
  if (loose) return dayNumberIn(Number(loose[1]), Number(loose[2]), Number(loose[3]));
  const match = YEAR_LAST.exec(text);
  if (!match || order === null) return Number.NaN;
  const [first, second, year] = [Number(match[1]), Number(match[3]), Number(match[4])];
  return order === 'day-first' ? dayNumberIn(year, second, first) : dayNumberIn(year, first, second);
}

/** The order of day and month in a file, and what shows it; null where every date begins with its year. */
export interface OrderFinding {
  readonly order: Order | null;
  readonly note: string | null;
}

/**
 * Day-first or month-first, as declared or as some date with a part above 12 proves; never guessed.
 * @param dates the texts with their lines
 * @throws {InvalidInputError} DATES_AMBIGUOUS where nothing decides, or dates contradict each other
 */
export function dateOrder(
  dates: Iterable<{ text: string; line: number }>,
  declared: Order | undefined,
  fileName: string,
): OrderFinding {
  const proofs = new Map<Order, string>();
  let example: string | null = null;
  for (const { text, line } of dates) {
    const match = YEAR_LAST.exec(text);
    if (!match) continue;
    example ??= text;
    const order = Number(match[1]) > 12 ? 'day-first' : Number(match[3]) > 12 ? 'month-first' : null;
    if (order !== null && !proofs.has(order)) proofs.set(order, `"${text}" (line ${line})`);
  }
  if (example === null) return { order: null, note: null };
  if (declared !== undefined) return { order: declared, note: `Dates read ${declared}, as declared` };
  if (proofs.size === 1) {
    const [[order, proof]] = proofs;
    return { order, note: `Dates read ${order}, as ${proof} proves` };
  }
  const reason =
    proofs.size === 0
      ? `dates such as "${example}" may be day-first or month-first, and no day above 12 tells`
      : `${proofs.get('day-first')} is day-first but ${proofs.get('month-first')} is month-first`;
  throw new InvalidInputError('DATES_AMBIGUOUS', `${fileName}: ${reason}.`, {
    hint:
      proofs.size === 0
        ? 'Say how they are written: --dates day-first or --dates month-first.'
        : 'Write all dates one way, best as YYYY-MM-DD.',
    details: { file: fileName, choices: ['day-first', 'month-first'] },
  });
}
