import { civilDateOf, dayNumberOf, daysInMonth } from '../calendar.ts';

/** First such date of the calendar on or after a day. [day number] */
export function nextDate(monthDay: string, day: number): number {
  const { year } = civilDateOf(day);
  const own = dateIn(monthDay, year);
  return own >= day ? own : dateIn(monthDay, year + 1);
}

/** Last such date of the calendar on or before a day. [day number] */
export function lastDateBefore(monthDay: string, day: number): number {
  const { year } = civilDateOf(day);
  const own = dateIn(monthDay, year);
  return own <= day ? own : dateIn(monthDay, year - 1);
}

function dateIn(monthDay: string, year: number): number {
  const [month, day] = monthDay.split('-').map(Number);
  return dayNumberOf(year, month, Math.min(day, daysInMonth(year, month)));
}
