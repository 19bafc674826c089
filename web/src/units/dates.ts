/** Dates as the page writes them: the one file of the page that asks the writer of dates. */
import { type DateStyle, type DateWords, datesIn, isCalendarDate } from '../../../src/dateWords.ts';
import type { Units } from './units.ts';

export { type DateStyle, type DateWords, datesReworded, monthName } from '../../../src/dateWords.ts';

/** Month and day stay on one line. */
const SHOWN: Record<DateStyle, DateWords> = {
  us: forgiving(datesIn('us', '\u00a0')),
  iso: joined(forgiving(datesIn('iso'))),
};
const TYPED: Record<DateStyle, DateWords> = { us: forgiving(datesIn('us')), iso: forgiving(datesIn('iso')) };

/** Dates of sentences and tables. */
export const shownDates = (style: DateStyle): DateWords => SHOWN[style];

/** Dates of blanks and files, with plain spaces. */
export const typedDates = (style: DateStyle): DateWords => TYPED[style];

/** The style that goes with units until the reader chooses one. */
export const styleWith = (units: Units): DateStyle => (units === 'us' ? 'us' : 'iso');

/** Keeps an ISO date on one line: browsers break lines after a hyphen that stands between digits. */
export const joinIsoDates = (text: string): string =>
  text.replaceAll(/(\d{4})-(\d{2})-(\d{2})/g, '$1-\u2060$2-\u2060$3');

/** The same words with their dates kept on one line. */
function joined(words: DateWords): DateWords {
  const kept = (say: (isoDate: string) => string) => (isoDate: string) => joinIsoDates(say(isoDate));
  return {
    ...words,
    full: kept(words.full),
    withWeekday: kept(words.withWeekday),
    short: kept(words.short),
    monthDay: kept(words.monthDay),
    near: (isoDate, near) => joinIsoDates(words.near(isoDate, near)),
  };
}

/** What an address holds may be no date: it is then given back as written. */
function forgiving(words: DateWords): DateWords {
  const kept = (say: (isoDate: string) => string) => (text: string) =>
    isCalendarDate(text) ? say(text) : text;
  return {
    ...words,
    full: kept(words.full),
    withWeekday: kept(words.withWeekday),
    weekday: (isoDate) => (isCalendarDate(isoDate) ? words.weekday(isoDate) : ''),
    short: kept(words.short),
    monthDay: kept(words.monthDay),
    near: (isoDate, near) => kept((date) => words.near(date, near))(isoDate),
  };
}
