import { lastDateBefore, nextDate } from '../analysis/calendarDates.ts';
import { judgeWater } from '../analysis/waterWindow.ts';
import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { titleOf } from '../catalogue/titleOf.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { CountingWindow } from '../schema/countingWindow.ts';
import type { CountingAdvice } from '../schema/labelCondition.ts';
import type { Question } from '../schema/question.ts';
import type { DailySeries } from '../schema/weather.ts';
import type { StationWeather } from './stationWeather.ts';

/**
 * The published counting rules of the field's country, against the season of the application: advice that sets no date.
 * A rule's window is the one under way at the application, or the next; all of its days count, those before the
 * application too, as the rules have it. Water given to the field does not. A window that only opens after planting says
 * nothing: it has its dates and no sum.
 */
export function countingWindowsOf(
  question: Question,
  { climate }: StationWeather,
  { countingWindows, sources }: Catalogue,
): CountingAdvice[] {
  return countingWindows
    .filter(({ country }) => country === question.country)
    .map((rule): CountingAdvice => {
      const base = {
        id: rule.id,
        kind: rule.kind,
        advice: rule.advice,
        region: rule.region,
        thresholdMm: rule.thresholdMm,
        source: rule.sources.map((id) => titleOf(id, sources)).join('; '),
        mark: rule.mark,
      };
      const window = windowOf(rule, parseIsoDate(question.appliedOn));
      const opensLate = window !== null && window.from >= parseIsoDate(question.plantOn);
      if (window === null || rule.thresholdMm === null || opensLate) {
        const { from = null, to = null } = window ?? {};
        return {
          ...base,
          from: from === null ? null : isoDateOf(from),
          to: to === null ? null : isoDateOf(to),
          sumMm: null,
          through: null,
          state: null,
          oddsUnder: null,
          range: null,
        };
      }
      return { ...base, ...judged(question, climate, window, rule.thresholdMm) };
    });
}

function windowOf({ from, to }: CountingWindow, appliedDay: number): { from: number; to: number } | null {
  if (from === null || to === null) return null;
  const end = nextDate(to, appliedDay);
  return { from: lastDateBefore(from, end), to: end };
}

function judged(
  question: Question,
  climate: StationWeather['climate'],
  { from, to }: { from: number; to: number },
  thresholdMm: number,
) {
  const asOfDay = lastKnownDay(question.asOf, climate.series);
  const season = {
    climate,
    firstDay: from,
    asOfDay,
    restOfSeasonRain: question.restOfSeasonRain,
    irrigation: [],
    base: { from: question.baseFrom, to: question.baseTo },
    plantDay: to,
  };
  const window = { fromDay: from, toDay: to, withIrrigation: false };
  const { state, amountMm, odds, range } = judgeWater(season, window, thresholdMm);
  return {
    from: isoDateOf(from),
    to: isoDateOf(to),
    sumMm: amountMm,
    through: amountMm === null || asOfDay === undefined ? null : isoDateOf(Math.min(asOfDay, to)),
    state: ({ met: 'reached', 'not met': 'under', open: 'open' } as const)[state],
    oddsUnder: odds === null ? null : 1 - odds,
    range: range && { low: 1 - range.high, high: 1 - range.low, years: range.years },
  };
}

/** The as-of day; the window may have begun before the application, so it counts though the spray is still to come. */
function lastKnownDay(asOf: string | undefined, { firstDay, days }: DailySeries): number | undefined {
  if (asOf === undefined) return undefined;
  return Math.min(parseIsoDate(asOf), firstDay + days - 1);
}
