import { isoDateOf, parseIsoDate } from '../calendar.ts';
import type { Answer } from '../schema/answer.ts';
import type { SheetPicture } from '../schema/sheet.ts';
import type { Say } from './say.ts';
import { sayLimit } from './words.ts';

const STEP_DAYS = 7;
/** Days shown before planting or label date, and after planting or clear date. [d] */
const MARGIN_DAYS = 42;
const MOST_POINTS = 60;

/** The odds by planting date round the dates that matter; null where there are none. */
export function sheetPicture(
  { season, inputs, labelDate, clearDate }: Answer,
  { dates }: Say,
): SheetPicture | null {
  if (season === undefined) return null;
  const { plantOn, oddsLimit } = inputs.question;
  const startDay = parseIsoDate(season.startDate);
  const days = [plantOn, labelDate, clearDate ?? plantOn].map((date) => parseIsoDate(date) - startDay);
  const first = Math.max(0, Math.min(...days) - MARGIN_DAYS);
  const last = Math.min(season.odds.length - 1, Math.max(...days) + MARGIN_DAYS);
  const step = STEP_DAYS * Math.max(1, Math.ceil((last - first) / STEP_DAYS / MOST_POINTS));
  const count = Math.floor((last - first) / step) + 1;
  const points = Array.from({ length: count }, (_, index) => {
    const offset = first + index * step;
    return { date: isoDateOf(startDay + offset), odds: season.odds[offset] };
  });
  const falls =
    clearDate === null
      ? `do not fall to the limit of ${sayLimit(oddsLimit)}`
      : `are down to the limit of ${sayLimit(oddsLimit)} for good on ${dates.full(clearDate)}`;
  return {
    points,
    plantOn,
    labelDate,
    clearDate,
    oddsLimit,
    caption: `Odds of harm by planting date: they ${falls}.`,
  };
}
