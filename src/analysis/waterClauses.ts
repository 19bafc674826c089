import { type Interval, labelDateOf } from '../model/calendar/interval.ts';
import type { Clause } from '../schema/clauses.ts';
import { lastDateBefore, nextDate } from './calendarDates.ts';
import { stateOf } from './conditionState.ts';
import { dayReached, judgeWater, SEARCH_DAYS, type WaterSeason } from './waterWindow.ts';

type ClauseOf<K extends Clause['kind']> = Extract<Clause, { kind: K }>;

/** Last day that counts where the source's own could not be read: the end of summer, after which rain counts little. */
const UNREAD_END = '08-31';
/** Spring ends on this day of the northern calendar. */
const SPRING_END = '05-31';

/** Water of a window; a crop that is not allowed before it has come waits for it while the window still runs. */
export function waterClause(
  { minMm, counts, window, ifNot }: ClauseOf<'water'>,
  granted: Interval,
  season: WaterSeason,
  oddsLimit: number,
) {
  const { firstDay, plantDay } = season;
  const toDay =
    window.to === 'planting'
      ? plantDay - 1
      : window.to === 'interval end'
        ? labelDateOf(firstDay, granted) - 1
        : nextDate(
            window.to === 'spring end' ? SPRING_END : window.to === 'unknown' ? UNREAD_END : window.to,
            firstDay,
          );
  const fromDay =
    window.from === 'application' ? firstDay : Math.max(firstDay, lastDateBefore(window.from, toDay));
  const withIrrigation = counts === 'rain and irrigation';
  const judgement = judgeWater(season, { fromDay, toDay, withIrrigation }, minMm);
  const movable = window.to === 'planting' || window.to === 'interval end';
  const endsAfterPlanting = !movable && toDay >= plantDay;
  if (ifNot !== 'not allowed' || !movable) {
    return { ...judgement, requiredMm: minMm, byDay: toDay, endsAfterPlanting };
  }
  const { safeDay } = dayReached(season, { fromDay, withIrrigation }, minMm, oddsLimit);
  return { ...judgement, requiredMm: minMm, byDay: toDay, ...waitOf(safeDay, fromDay) };
}

/** Planting may follow the day on which the water is there. */
const waitOf = (safeDay: number | null, fromDay: number) => ({
  waitsUntilDay: (safeDay ?? fromDay + SEARCH_DAYS) + 1,
  waitsForever: safeDay === null,
});

/** The interval begins on the day on which the rain has fallen; the odds are those that it has run out by planting. */
export function startingRain(minMm: number, interval: Interval, season: WaterSeason, oddsLimit: number) {
  const { firstDay, plantDay } = season;
  let byDay = plantDay;
  while (byDay >= firstDay && labelDateOf(byDay, interval) > plantDay) byDay--;
  const reached = dayReached(season, { fromDay: firstDay, withIrrigation: false }, minMm, oddsLimit);
  const { asOfDay } = season;
  const late = asOfDay !== undefined && asOfDay >= byDay && (reached.observedDay ?? asOfDay + 1) > byDay;
  const window = { fromDay: firstDay, toDay: Math.max(byDay, firstDay), withIrrigation: false };
  const { amountMm } = judgeWater(season, window, minMm);
  return {
    ...reached.by(byDay),
    state: stateOf(
      byDay < firstDay || late
        ? false
        : reached.observedDay !== null && reached.observedDay <= byDay
          ? true
          : null,
    ),
    amountMm,
    requiredMm: minMm,
    byDay: byDay < firstDay ? null : byDay,
    waitsUntilDay: reached.safeDay ?? firstDay + SEARCH_DAYS,
    waitsForever: reached.safeDay === null,
  } as const;
}

/** Rain that must have come by a day, so that late storms alone do not count. */
export function stormGuard({ by, minMm }: ClauseOf<'stormGuard'>, season: WaterSeason) {
  const byDay = nextDate(by === 'spring end' ? SPRING_END : by, season.firstDay);
  const window = { fromDay: season.firstDay, toDay: byDay, withIrrigation: false };
  return {
    ...judgeWater(season, window, minMm),
    requiredMm: minMm,
    byDay,
    endsAfterPlanting: byDay >= season.plantDay,
  };
}
