import { MS_PER_DAY, msOf } from '../../../src/chart/dateMs.ts';
import type { Answer } from '../api/contract.ts';
import { isoOf } from '../question/calendar.ts';

type Season = NonNullable<Answer['season']>;

/** The season’s odds on a date, over all years and in each third. */
export interface SeasonRow {
  readonly date: string;
  readonly odds: number;
  readonly dry: number | null;
  readonly middle: number | null;
  readonly wet: number | null;
}

/** One row for each step of the years’ curves, as far as the ruler reaches. */
export function seasonRows({ startDate, odds, years, yearStepDays }: Season, lastDay: number): SeasonRow[] {
  const start = msOf(startDate) / MS_PER_DAY;
  const meanOf = (third: SeasonThird, step: number) => {
    const values = years
      .filter((year) => year.third === third && year.probability[step] !== undefined)
      .map(({ probability }) => probability[step]);
    return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
  };
  const rows: SeasonRow[] = [];
  for (let step = 0; step * yearStepDays <= lastDay && odds[step * yearStepDays] !== undefined; step++) {
    rows.push({
      date: isoOf(start + step * yearStepDays),
      odds: odds[step * yearStepDays],
      dry: meanOf('dry', step),
      middle: meanOf('middle', step),
      wet: meanOf('wet', step),
    });
  }
  return rows;
}

type SeasonThird = Season['years'][number]['third'];
