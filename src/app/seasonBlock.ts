import { clearOffset } from '../analysis/oddsCurve.ts';
import type { SeasonOdds } from '../analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { type SeasonStory, seasonStory } from '../analysis/seasonStory.ts';
import type { StationClimate } from '../analysis/stationClimate.ts';
import type { ThirdName } from '../analysis/thirds.ts';
import { isoDateOf } from '../calendar.ts';
import type { Season } from '../schema/answer.ts';
import { RAIN_FILLED } from '../schema/codes.ts';

const YEAR_STEP_DAYS = 7;
const DOTS = 20;

/** Curves, quantile dots and rain of a season, for charts. */
export function seasonBlock(
  climate: StationClimate,
  question: SeasonQuestion,
  odds: SeasonOdds,
  thirdOf: (index: number) => ThirdName,
): Season {
  const rain = rainBlock(climate, odds);
  return {
    startDate: isoDateOf(odds.firstDay),
    odds: [...odds.curve.odds],
    yearStepDays: YEAR_STEP_DAYS,
    years: odds.years.map(({ year, probabilities }, index) => ({
      year,
      third: thirdOf(index),
      probability: Array.from(
        { length: Math.ceil(probabilities.length / YEAR_STEP_DAYS) },
        (_, step) => probabilities[step * YEAR_STEP_DAYS],
      ),
    })),
    quantileDates: Array.from({ length: DOTS }, (_, dot) => {
      const offset = clearOffset(odds.curve.odds, 0, 1 - (dot + 0.5) / DOTS);
      return offset === null ? null : isoDateOf(odds.firstDay + offset);
    }),
    rain,
    story: storyBlock(seasonStory(climate, question, odds), odds, rain),
  };
}

function storyBlock(
  { steps, delay, toDate }: SeasonStory,
  { firstDay, oddsAtPlanting }: SeasonOdds,
  { observedMm, normalMm }: Season['rain'],
): Season['story'] {
  return {
    weeks: steps.map(({ observedDays, odds }) => ({
      observedThrough: observedDays === 0 ? null : isoDateOf(firstDay + observedDays - 1),
      odds,
    })),
    delay: delay.map(({ weeks, offset, odds }, index) => ({
      weeks,
      plantOn: isoDateOf(firstDay + offset),
      odds,
      gain: (delay[index - 1]?.odds ?? oddsAtPlanting) - odds,
    })),
    rainShortfallMm: toDate && normalMm - observedMm,
    breakdown: toDate && {
      toDate: toDate.breakdownDays,
      normal: toDate.normalBreakdownDays,
      shortfall: toDate.normalBreakdownDays - toDate.breakdownDays,
    },
  };
}

/** Rain since application against the mean of the historical years over the same days. */
function rainBlock({ series }: StationClimate, odds: SeasonOdds): Season['rain'] {
  const start = odds.firstDay - series.firstDay;
  const last = Math.max(odds.plantOffset, odds.observedDays) + 1;
  const normals = odds.years.map(({ start: index }) => series.rainMm.subarray(index, index + last));
  const normalOf = (offset: number) =>
    normals.reduce((sum, rain) => sum + (rain[offset] ?? 0), 0) / normals.length;

  const months = new Map<string, { observedMm: number | null; normalMm: number }>();
  let observedMm = 0;
  let normalMm = 0;
  for (let offset = 0; offset < last; offset++) {
    const key = isoDateOf(odds.firstDay + offset).slice(0, 7);
    const month = months.get(key) ?? { observedMm: null, normalMm: 0 };
    months.set(key, month);
    const normal = normalOf(offset);
    month.normalMm += normal;
    if (offset < odds.observedDays && series.rainOrigin[start + offset] !== RAIN_FILLED) {
      const rain = series.rainMm[start + offset];
      month.observedMm = (month.observedMm ?? 0) + rain;
      observedMm += rain;
      normalMm += normal;
    }
  }
  return {
    observedMm,
    normalMm,
    percentOfNormal: normalMm > 0 ? (observedMm / normalMm) * 100 : null,
    months: [...months].map(([month, values]) => ({ month, ...values })),
  };
}
