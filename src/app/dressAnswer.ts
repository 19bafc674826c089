import type { Answer } from '../schema/answer.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { StoredLabel } from '../schema/labelEntry.ts';
import { conditionCautions } from './conditionCautions.ts';
import { countingWindowsOf } from './countingWindows.ts';
import { NEUTRAL, type Say } from './say.ts';
import type { StationWeather } from './stationWeather.ts';
import { tradeCautions } from './tradeCautions.ts';
import type { Treatment } from './treatment.ts';

/** An answer before the label's conditions and the rules of the trade stand beside it. */
export type BareAnswer = Omit<Answer, 'conditions' | 'countingWindows' | 'mix' | 'inputs'> & {
  inputs: Omit<Answer['inputs'], 'labelEntry'>;
};

/** Puts conditions, counting rules, and the cautions that go with them beside an answer. */
export function dressAnswer(
  answer: BareAnswer,
  treatment: Treatment,
  weather: StationWeather,
  catalogue: Catalogue,
  stored: StoredLabel | null,
  say: Say,
): Answer {
  const { question } = treatment.resolved;
  const besides = treatment.resolved.beside;
  return {
    ...answer,
    advice: [...forbiddenWords([treatment, ...besides]), answer.advice].join(' '),
    conditions: [...treatment.conditions, ...besides.flatMap((other) => conditionsBeside(other, say))],
    countingWindows: countingWindowsOf(question, weather, catalogue),
    mix: [],
    cautions: [
      ...conditionCautions(treatment, stored, say),
      ...answer.cautions,
      ...besides.flatMap((other) => besideCautions(other, say)),
      ...tradeCautions(treatment, weather, say),
    ],
    inputs: { ...answer.inputs, labelEntry: stored },
  };
}

const nameOf = (
  { resolved: { treatmentName, question } }: Treatment,
  { dates }: Pick<Say, 'dates'>,
): string => `${treatmentName} of ${dates.full(question.appliedOn)}`;

/** Conditions of another treatment of the field, named. */
const conditionsBeside = (other: Treatment, say: Say): Answer['conditions'] =>
  other.conditions.map((one) => ({
    ...one,
    name: `${nameOf(other, NEUTRAL)}: ${one.name}`,
    text: `${nameOf(other, say)}: ${one.text}`,
  }));

const besideCautions = (other: Treatment, say: Say): Answer['cautions'] =>
  conditionCautions(other, null, say).map((one) => ({ ...one, text: `${nameOf(other, say)}: ${one.text}` }));

/** A sentence for each crop that the label of a treatment does not let follow, as things stand. */
export const forbiddenWords = (treatments: readonly Treatment[]): string[] => {
  const crops = treatments
    .filter(({ resolved }) => resolved.labelForbids)
    .map(({ resolved }) => resolved.cropName);
  return [...new Set(crops)].map(
    (crop) => `The label does not let ${crop} follow: one of its conditions is not met.`,
  );
};
