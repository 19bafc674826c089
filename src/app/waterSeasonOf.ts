import type { WaterSeason } from '../analysis/waterWindow.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { observedThrough } from './seasonQuestionOf.ts';
import type { StationWeather } from './stationWeather.ts';
import { weatherOfOtherDays } from './weatherOfOtherDays.ts';

/** The season that a question's sums of water are taken from. */
export function waterSeasonOf(
  { question, application, plantDay }: ResolvedQuestion,
  { climate }: StationWeather,
): WaterSeason {
  return {
    climate,
    firstDay: application.appliedDay,
    asOfDay: observedThrough(question.asOf, application.appliedDay, climate.series),
    ...weatherOfOtherDays(question),
    plantDay,
  };
}
