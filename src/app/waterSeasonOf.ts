import type { WaterSeason } from '../analysis/waterWindow.ts';
import { parseIsoDate } from '../calendar.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { observedThrough } from './seasonQuestionOf.ts';
import type { StationWeather } from './stationWeather.ts';

/** The season that a question's sums of water are taken from. */
export function waterSeasonOf(
  { question, application, plantDay }: ResolvedQuestion,
  { climate }: StationWeather,
): WaterSeason {
  const { outlook } = question;
  const dayOrNone = (date: string | undefined) => (date === undefined ? undefined : parseIsoDate(date));
  return {
    climate,
    firstDay: application.appliedDay,
    asOfDay: observedThrough(question.asOf, application.appliedDay, climate.series),
    restOfSeasonRain: question.restOfSeasonRain,
    irrigation: question.irrigation.map(({ date, mm }) => ({ day: parseIsoDate(date), mm })),
    base: { from: question.baseFrom, to: question.baseTo },
    outlook: outlook && {
      below: outlook.belowPercent / 100,
      near: outlook.nearPercent / 100,
      above: outlook.abovePercent / 100,
      fromDay: dayOrNone(outlook.from),
      toDay: dayOrNone(outlook.to),
    },
    plantDay,
  };
}
