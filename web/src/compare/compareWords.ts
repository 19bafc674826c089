import { sayOdds } from '../answer/oddsInWords.ts';
import type { Comparison, QuestionInput, ResidualRow, StationExtent } from '../api/contract.ts';
import { QUESTION_DEFAULTS } from '../question/defaults.ts';
import { sayOddsLimit } from '../question/questionInWords.ts';
import type { DateWords } from '../units/dates.ts';
import { rainText, type Units } from '../units/units.ts';
import { theyAre } from '../words/theyAre.ts';

type Weeks = NonNullable<ResidualRow['weeksOfControl']>;

/** The search for the end of weed control goes no further than this. [weeks] */
const LONGEST_WEEKS = 150;

export const sayWeeks = (weeks: number | null): string =>
  weeks === null ? `over ${LONGEST_WEEKS}` : weeks < 9.95 ? weeks.toFixed(1) : `${Math.round(weeks)}`;

/** "9.0 to 9.9", shortest first; one number where both ends read alike. */
export function sayWeekRange({ dry, wet }: Weeks): string {
  const ends = [sayWeeks(wet), sayWeeks(dry)];
  return ends[0] === ends[1] ? ends[0] : ends.join(' to ');
}

/** A residual that stays in the soil and whose odds are reckoned. */
const inSoil = ({ oddsAtPlanting }: ResidualRow) => oddsAtPlanting !== null;

/** The one with the most weeks of control; undefined where none has weeks. */
export function longestLasting(rows: readonly ResidualRow[]): ResidualRow | undefined {
  return rows.reduce<ResidualRow | undefined>((best, row) => {
    if (row.weeksOfControl === null) return best;
    return best?.weeksOfControl && middle(best.weeksOfControl) >= middle(row.weeksOfControl) ? best : row;
  }, undefined);
}

const middle = (weeks: Weeks) => weeks.middle ?? Number.POSITIVE_INFINITY;

/** What the comparison comes to, in one sentence. */
export function comparisonFinding(answer: Comparison, dates: DateWords): string {
  const { crop, residuals, question } = answer;
  const judged = residuals.filter(inSoil);
  const fit = judged.filter(({ withinLimit }) => withinLimit);
  const before = `before ${crop} planted ${dates.full(question.plantOn)}`;
  if (judged.length === 0) return `No residual can be judged ${before}.`;
  const limit = sayOddsLimit(question.oddsLimit);
  if (fit.length === 0) {
    const allowed = judged.filter(({ labelAllows }) => labelAllows);
    const least = allowed[0];
    return least === undefined || least.oddsAtPlanting === null
      ? `None of ${judged.length} soil residuals may stand ${before}: the label rules all of them out.`
      : `None of ${judged.length} soil residuals fits ${before}: the label allows ${allowed.length}, but even ${least.residual} harms in ${sayOdds(least.oddsAtPlanting)} seasons and soils like this, above your limit of ${limit}.`;
  }
  const some = `${fit.length} of ${judged.length} soil residuals fit ${before}, by label and by your limit of ${limit}`;
  const longest = longestLasting(fit);
  return longest?.weeksOfControl
    ? `${some}; ${longest.residual} holds weeds longest ${
        fit.every(({ weeksOfControl }) => weeksOfControl !== null) ? 'among them' : 'where that is known'
      }, ${weeksText(longest.weeksOfControl.middle)}.`
    : `${some}; how long they hold weeds is not known.`;
}

/** The residuals that fit, by name; empty where none does. */
export function fittingWords({ residuals }: Comparison): string {
  const fit = residuals.filter((row) => row.withinLimit && inSoil(row));
  return fit.length === 0 ? '' : theyAre(fit.map(({ residual }) => residual));
}

const weeksText = (weeks: number | null) => `${sayWeeks(weeks)} ${weeks === 1 ? 'week' : 'weeks'}`;

/** What trading more risk for longer control would bring. */
export function tradeFinding({ residuals }: Comparison): string {
  const fit = residuals.filter(({ withinLimit }) => withinLimit).filter(inSoil);
  const over = residuals.filter((row) => row.labelAllows && !row.withinLimit && inSoil(row));
  const longer = longestLasting(over);
  const best = longestLasting(fit);
  if (!longer?.weeksOfControl || longer.oddsAtPlanting === null)
    return 'Odds on the planting date against weeks of weed control.';
  const more = best?.weeksOfControl == null || middle(longer.weeksOfControl) > middle(best.weeksOfControl);
  return more
    ? `Longer control costs odds: ${longer.residual} holds ${sayWeeks(longer.weeksOfControl.middle)} weeks, at ${sayOdds(longer.oddsAtPlanting)}.`
    : 'Those over your limit hold weeds no longer than those within it.';
}

/** Whether rain puts a soil residual to work. */
export function activationSentence({ activation }: Comparison, units: Units): string | null {
  if (activation === null) return null;
  const { odds, low, high, neededMm, withinDays } = activation;
  const ends = [Math.round(low * 20), Math.round(high * 20)];
  const range = ends[0] === ends[1] ? '' : `, between ${ends[0]} and ${ends[1]} in 20`;
  return `A soil residual works once ${rainText(neededMm, units)} of water has come within ${withinDays} days of spraying; that happens in ${sayOdds(odds)} years${range}.`;
}

/** The question as one sentence, for print. */
export function comparisonInWords(
  question: QuestionInput,
  stations: readonly StationExtent[],
  dates: DateWords,
): string {
  const station = stations.find(({ id }) => id === question.station)?.name ?? question.station;
  const rate = Math.round((question.rateFraction ?? QUESTION_DEFAULTS.rateFraction) * 100);
  const soil = question.soilClass ? ` on ${question.soilClass}` : '';
  const limit = sayOddsLimit(question.oddsLimit ?? QUESTION_DEFAULTS.oddsLimit);
  return (
    `Residuals sprayed on ${dates.full(question.appliedOn)}, each at ${rate} % of its top label rate, before ` +
    `${question.crop} planted ${dates.full(question.plantOn)}${soil} near ${station}. I accept ${limit}.`
  );
}
