import { MS_PER_DAY, msOf } from '../../../src/chart/dateMs.ts';
import { twentieths } from '../answer/oddsInWords.ts';
import type { Answer } from '../api/contract.ts';
import { isoOf } from '../question/calendar.ts';
import type { Column } from './csv.ts';

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

/** The column of the year that is followed; none where none is. */
export function pickedYear(
  { startDate, years, yearStepDays }: Season,
  picked: number | null,
): Column<SeasonRow>[] {
  const year = years.find((one) => one.year === picked);
  if (year === undefined) return [];
  const cell = ({ date }: SeasonRow) => {
    const step = (msOf(date) - msOf(startDate)) / MS_PER_DAY / yearStepDays;
    const odds = year.probability[Math.round(step)];
    return odds === undefined ? null : twentieths(odds);
  };
  return [{ head: `${year.year}, in 20`, cell, number: true }];
}

type SeasonThird = Season['years'][number]['third'];
