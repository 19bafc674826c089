import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { parseIsoDate } from '../calendar.ts';
import type { OwnAmount } from '../model/weather/ownRecords.ts';
import type { Question } from '../schema/question.ts';

/** What a question says of days that the station has not observed: whose years stand for them, how, and water given. */
export function weatherOfOtherDays({
  baseFrom,
  baseTo,
  outlook,
  restOfSeasonRain,
  irrigation,
}: Question): Pick<SeasonQuestion, 'base' | 'outlook' | 'restOfSeasonRain'> & {
  readonly irrigation: readonly OwnAmount[];
} {
  return {
    base: { from: baseFrom, to: baseTo },
    outlook: outlook && {
      below: outlook.belowPercent / 100,
      near: outlook.nearPercent / 100,
      above: outlook.abovePercent / 100,
      fromDay: dayOrNone(outlook.from),
      toDay: dayOrNone(outlook.to),
    },
    restOfSeasonRain,
    irrigation: irrigation.map(({ date, mm }) => ({ day: parseIsoDate(date), mm })),
  };
}

const dayOrNone = (date: string | undefined): number | undefined =>
  date === undefined ? undefined : parseIsoDate(date);
