import { breakdownRecord } from './breakdownRecord.ts';
import { plantingOdds } from './plantingOdds.ts';
import type { SeasonOdds } from './seasonOdds.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import type { StationClimate } from './stationClimate.ts';

/** Days from one step of the story to the next. [d] */
const STEP_DAYS = 7;
/** Most steps of the story: three years of weeks. A longer season is told in steps of several weeks. */
const MOST_STEPS = 157;
/** Further weeks of delay that are looked at. */
const DELAY_WEEKS = 12;

/** Odds at planting as they stood at the end of a day. */
export interface StoryStep {
  /** Days from the first application that were observed by then; 0 = the plan. */
  readonly observedDays: number;
  readonly odds: number;
}

/** What planting some weeks later does. */
export interface DelayStep {
  readonly weeks: number;
  /** Days from the first application to that planting [d]. */
  readonly offset: number;
  readonly odds: number;
}

/** Breakdown since the application against the years. */
export interface BreakdownToDate {
  /** Mean over the traces, which differ only where observations are missing [breakdown days]. */
  readonly breakdownDays: number;
  /** Mean of the years' own over the same days [breakdown days]. */
  readonly normalBreakdownDays: number;
}

/** How the season has gone, and what waiting gains. */
export interface SeasonStory {
  /**
   * The plan, the end of each week since the application, and the last observed day; empty while planning. After three
   * years the weeks told lie evenly further apart.
   */
  readonly steps: readonly StoryStep[];
  readonly delay: readonly DelayStep[];
  /** null while planning. */
  readonly toDate: BreakdownToDate | null;
}

/**
 * The story of the season: how the odds at planting moved from week to week with what was known by then (weather and
 * evidence), what each further week of delay gains, and how far breakdown lags behind the years.
 */
export function seasonStory(
  climate: StationClimate,
  question: SeasonQuestion,
  odds: SeasonOdds,
): SeasonStory {
  const { plantOffset, curve } = odds;
  const delay: DelayStep[] = [];
  for (let weeks = 1; weeks <= DELAY_WEEKS; weeks++) {
    const offset = plantOffset + weeks * STEP_DAYS;
    if (offset < curve.odds.length) delay.push({ weeks, offset, odds: curve.odds[offset] });
  }
  return { delay, steps: stepsOf(climate, question, odds), toDate: toDate(climate, question, odds) };
}

function stepsOf(climate: StationClimate, question: SeasonQuestion, odds: SeasonOdds): StoryStep[] {
  const { observedDays, plantOffset, oddsAtPlanting } = odds;
  if (observedDays === 0) return [];
  const steps: StoryStep[] = [];
  // What is observed after planting moves nothing any more.
  const last = Math.min(observedDays, plantOffset);
  const stepDays = STEP_DAYS * Math.ceil(last / (STEP_DAYS * MOST_STEPS));
  for (let days = 0; days < last; days += stepDays) {
    steps.push({ observedDays: days, odds: plantingOdds(climate, question, odds, days) });
  }
  return [...steps, { observedDays, odds: oddsAtPlanting }];
}

function toDate(
  climate: StationClimate,
  question: SeasonQuestion,
  { years, judged, observedDays }: SeasonOdds,
): BreakdownToDate | null {
  if (observedDays === 0) return null;
  const [{ application, traces }] = judged;
  const { sums } = breakdownRecord(climate, question.layer, application.response, question.assumptions);
  const days = Math.min(observedDays, ...traces.map(({ lastOffset }) => lastOffset));
  return {
    breakdownDays: meanOf(traces.map((trace) => trace.sums[trace.base + days] - trace.sums[trace.base])),
    normalBreakdownDays: meanOf(years.map((year) => sums[year.start + days] - sums[year.start])),
  };
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
