import type { Answer } from '../schema/answer.ts';
import type { Say } from './say.ts';
import { sayDays, sayLimit, sayOddsOf } from './words.ts';

/** What the sentence and the advice are made of. */
export type Spoken = Pick<Answer, 'carryoverModelled' | 'labelDate' | 'clearDate' | 'oddsAtPlanting'> & {
  readonly inputs: Omit<Answer['inputs'], 'labelEntry'>;
  /** Why there is no clear date, where there is none. */
  readonly notClear: string;
  readonly say: Say;
};

/**
 * The answer in one sentence: odds with their class named, and in the same breath whether the interval
 * still has to be confirmed from a label.
 */
export function sentenceOf(answer: Spoken): string {
  const { question, residual, crop } = answer.inputs;
  const planted = answer.say.dates.full(question.plantOn);
  if (!answer.carryoverModelled || answer.oddsAtPlanting === null) {
    const { months, days } = answer.inputs.interval;
    const reason =
      months + days === 0
        ? 'the rotation interval is zero'
        : 'roots take up next to nothing of what soil holds of it';
    return `No carryover is reckoned for ${crop} after ${residual.name}: ${reason}${unconfirmed(answer)}.`;
  }
  const odds = sayOddsOf(answer.oddsAtPlanting, 'seasons and soils like this');
  const sprayed = answer.say.dates.near(question.appliedOn, question.plantOn);
  return `In ${odds}, ${residual.name} sprayed ${sprayed} ${besideWords(answer)}would hurt ${crop} planted ${planted}${unconfirmed(answer)}.`;
}

/** The field's other treatments that count, between commas. */
function besideWords({ inputs: { otherTreatments }, say }: Spoken): string {
  const names = otherTreatments
    .filter(({ leavesResidue }) => leavesResidue)
    .map(({ residual, appliedOn }) => `${residual.name} of ${say.dates.full(appliedOn)}`);
  if (names.length === 0) return '';
  const last = names.pop();
  return `together with ${names.length > 0 ? `${names.join(', ')} and ` : ''}${last} `;
}

/** Which intervals still have to be confirmed from a label; empty where all are. */
function unconfirmed({ inputs: { residual, interval, mainInterval, otherTreatments } }: Spoken): string {
  if (otherTreatments.length > 0) {
    const open = [{ residual, interval: mainInterval }, ...otherTreatments].filter(
      (one) => !one.interval.confirmed,
    );
    const said = open.map(
      (one) =>
        `that of ${one.residual.name} is ${one.interval.text} ${one.interval.fromMemory ? 'from memory' : 'as published'}`,
    );
    return said.length === 0 ? '' : `, on intervals not yet confirmed: ${said.join(', ')}`;
  }
  if (interval.confirmed) return '';
  return interval.fromMemory
    ? `, if your label’s interval is ${interval.text}: a figure from memory, not yet confirmed`
    : `, if your label’s interval is ${interval.text} as published, not yet confirmed`;
}

/** What to do about it. Never points to a date before the label date. */
export function adviceOf(answer: Spoken): string {
  const { question, crop } = answer.inputs;
  const planted = question.plantOn;
  const limit = sayLimit(question.oddsLimit);
  const tooEarly = planted < answer.labelDate;
  const floor = `The label interval rules out planting ${crop} before ${answer.say.dates.near(answer.labelDate, planted)}.`;
  if (!answer.carryoverModelled) return tooEarly ? floor : 'Follow the label’s own conditions.';
  if (answer.clearDate === null) {
    return `${tooEarly ? `${floor} ` : ''}The odds do not fall to your limit of ${limit} ${answer.notClear}: look at another crop, or test the soil.`;
  }
  if (answer.clearDate <= planted)
    return `That is within your limit of ${limit}. The label’s own conditions still hold.`;
  const wait = daysBetween(planted, answer.clearDate);
  const until = `wait until ${answer.say.dates.near(answer.clearDate, planted)}, about ${sayDays(wait)} later, when the odds are down to your limit of ${limit}`;
  return tooEarly && answer.clearDate === answer.labelDate
    ? `${floor} From that day on the odds are within your limit of ${limit}.`
    : `${tooEarly ? `${floor} ` : ''}${capital(until)}; or look at another crop, or test the soil.`;
}

const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;

const capital = (text: string): string => text[0].toUpperCase() + text.slice(1);
