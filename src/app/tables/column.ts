import { type Part, valueAt } from './partPath.ts';

/** Units of the amounts in a table; heads say them. */
export type TableUnits = 'us' | 'metric';

/** A unit of the United States beside the metric one. */
interface OtherUnit {
  /** Head of the column in that unit. */
  readonly header: string;
  from(metric: number): number;
  toMetric(given: number): number;
}

/** A column of a table. */
export interface Column {
  readonly header: string;
  /** Where the value stands in the record or part. */
  readonly path: string;
  /** text = as it stands; word = without blanks around; water = DATE=AMOUNT pairs; json = anything else. */
  readonly kind: 'text' | 'word' | 'number' | 'water' | 'json';
  readonly us?: OtherUnit;
}

/** Digits with which amounts in other units are written. */
const DIGITS = 12;

const written = (us: OtherUnit, metric: number): number => Number(us.from(metric).toPrecision(DIGITS));

/** The shortest metric amount that is written as the given one; a change of unit and back then leaves no trace. */
function shortestMetric(us: OtherUnit, given: number): number {
  const exact = us.toMetric(given);
  for (let digits = 1; digits <= DIGITS; digits++) {
    const shorter = Number(exact.toPrecision(digits));
    if (written(us, shorter) === given) return shorter;
  }
  return exact;
}

/** What a column is headed with in these units. */
export const headerOf = ({ header, us }: Column, units: TableUnits): string =>
  units === 'us' ? (us?.header ?? header) : header;

/** The cell of a value. */
export function cellOf(column: Column, part: Part, units: TableUnits): string {
  const value = valueAt(part, column.path);
  if (value === undefined || value === null) return '';
  const { us } = column;
  const say = (amount: number) => String(units === 'us' && us ? written(us, amount) : amount);
  switch (column.kind) {
    case 'number':
      return say(value as number);
    case 'water':
      return (value as { date: string; mm: number }[]).map(({ date, mm }) => `${date}=${say(mm)}`).join('; ');
    case 'json':
      return Array.isArray(value) && value.length === 0 ? '' : JSON.stringify(value);
    default:
      return String(value);
  }
}

/**
 * The value of a cell; undefined where it is empty.
 * @throws {Error} whose message says what is wrong with it
 */
export function readCell({ kind, us }: Column, cell: string, units: TableUnits): unknown {
  const word = cell.trim();
  if (word === '') return kind === 'text' && cell !== '' ? cell : undefined;
  const amountOf = (text: string): number => {
    const amount = Number(text);
    if (text.trim() === '' || !Number.isFinite(amount)) throw new Error(`"${text}" is no number`);
    return units === 'us' && us ? shortestMetric(us, amount) : amount;
  };
  switch (kind) {
    case 'text':
      return cell;
    case 'word':
      return word;
    case 'number':
      return amountOf(word);
    case 'water':
      return word
        .split(';')
        .filter((pair) => pair.trim() !== '')
        .map((pair) => {
          const [date, amount = ''] = pair.split('=');
          return { date: date.trim(), mm: amountOf(amount) };
        });
    case 'json':
      try {
        return JSON.parse(word);
      } catch {
        throw new Error('the cell is not JSON');
      }
  }
}
