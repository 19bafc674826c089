import { type DateStyle, typedDates } from '../units/dates.ts';
import { shownNumber, storedNumber, type Units } from '../units/units.ts';
import { isoOf } from './calendar.ts';
import { parseDate, type Reading } from './parseDate.ts';

/** Water on a day, as an own gauge or an irrigation log has it. */
export interface DayAmount {
  readonly date: string;
  readonly mm: number;
}

/** One day a line: "September 3, 2026: 0.45". */
export const amountsText = (amounts: readonly DayAmount[], units: Units, style: DateStyle): string =>
  amounts
    .map(({ date, mm }) => `${typedDates(style).full(date)}: ${shownNumber(mm, 'rain', units)}`)
    .join('\n');

/** Reads one day a line, the amount last; a colon or a space stands between them. */
export function readAmounts(
  text: string,
  units: Units,
  style: DateStyle,
  mostMm: number,
): Reading<DayAmount[]> {
  const amounts: DayAmount[] = [];
  for (const line of text.split('\n').filter((part) => part.trim() !== '')) {
    const match = /^(.*\S)\s*[:\s]\s*(\d+\.?\d*|\.\d+)\s*$/.exec(line);
    if (!match)
      return { problem: `“${line.trim()}” lacks a date or an amount. Write ${example(units, style)}.` };
    const date = parseDate(match[1].replace(/:$/, ''), style);
    if ('problem' in date) return date;
    const mm = storedNumber(Number(match[2]), 'rain', units);
    if (mm > mostMm) {
      return { problem: `“${line.trim()}” is more than ${shownNumber(mostMm, 'rain', units)} in a day.` };
    }
    if (amounts.some((other) => other.date === date.value)) {
      return { problem: `${typedDates(style).full(date.value)} stands there twice; keep one line for it.` };
    }
    amounts.push({ date: date.value, mm });
  }
  return { value: amounts };
}

/** A line to show how it is done. */
export const example = (units: Units, style: DateStyle): string =>
  `${typedDates(style).full(isoOf(20_699))}: ${units === 'us' ? '0.45' : '11'}`;

/** For the address: "2026-09-03:11.5,2026-09-05:2". */
export const encodeAmounts = (amounts: readonly DayAmount[]): string =>
  amounts.map(({ date, mm }) => `${date}:${mm}`).join(',');

/** The same read back; parts that cannot be read stay as texts and numbers that the server will refuse. */
export const decodeAmounts = (text: string): DayAmount[] =>
  text
    .split(',')
    .filter((part) => part !== '')
    .map((part) => {
      const [date, mm] = part.split(':');
      return { date, mm: Number(mm) };
    });
