import type { QuestionInput, StationExtent } from '../api/contract.ts';
import type { DateWords } from '../units/dates.ts';
import { QUESTION_DEFAULTS } from './defaults.ts';

/** The whole sentence of the question, for the sheet’s button and for print. */
export function questionInWords(
  question: QuestionInput,
  stations: readonly StationExtent[],
  dates: DateWords,
): string {
  const station = stations.find(({ id }) => id === question.station)?.name ?? question.station;
  const rate = Math.round((question.rateFraction ?? QUESTION_DEFAULTS.rateFraction) * 100);
  const label = question.interval ? ` My label says ${question.interval}.` : '';
  const soil = question.soilClass ? ` on ${question.soilClass}` : '';
  return (
    `I sprayed ${question.residual} on ${dates.full(question.appliedOn)} at ${rate} % of the top label rate, ` +
    `before ${question.crop}, planting ${dates.full(question.plantOn)}${soil} near ${station}.${label} ` +
    `I accept ${sayOddsLimit(question.oddsLimit ?? QUESTION_DEFAULTS.oddsLimit)}.`
  );
}

/** "2 in 20", with a fraction where the limit is not a whole number of twentieths. */
export const sayOddsLimit = (limit: number): string => `${Number((limit * 20).toPrecision(3))} in 20`;
