import type { Answer } from '../schema/answer.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { StoredLabel } from '../schema/labelEntry.ts';
import type { StationWeather } from './climateCache.ts';
import { conditionCautions } from './conditionCautions.ts';
import { countingWindowsOf } from './countingWindows.ts';
import { tradeCautions } from './tradeCautions.ts';
import type { Treatment } from './treatment.ts';
import { sayDate } from './words.ts';

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
): Answer {
  const { question } = treatment.resolved;
  const besides = treatment.resolved.beside;
  return {
    ...answer,
    advice: [...forbiddenWords([treatment, ...besides]), answer.advice].join(' '),
    conditions: [...treatment.conditions, ...besides.flatMap(conditionsBeside)],
    countingWindows: countingWindowsOf(question, weather, catalogue),
    mix: [],
    cautions: [
      ...conditionCautions(treatment, stored),
      ...answer.cautions,
      ...besides.flatMap(besideCautions),
      ...tradeCautions(treatment, weather),
    ],
    inputs: { ...answer.inputs, labelEntry: stored },
  };
}

const nameOf = ({ resolved: { treatmentName, question } }: Treatment): string =>
  `${treatmentName} of ${sayDate(question.appliedOn)}`;

/** Conditions of another treatment of the field, named. */
const conditionsBeside = (other: Treatment): Answer['conditions'] =>
  other.conditions.map((one) => ({ ...one, text: `${nameOf(other)}: ${one.text}` }));

const besideCautions = (other: Treatment): Answer['cautions'] =>
  conditionCautions(other, null).map((one) => ({ ...one, text: `${nameOf(other)}: ${one.text}` }));

/** A sentence for each crop that the label of a treatment does not let follow, as things stand. */
export const forbiddenWords = (treatments: readonly Treatment[]): string[] => {
  const crops = treatments
    .filter(({ resolved }) => resolved.labelForbids)
    .map(({ resolved }) => resolved.cropName);
  return [...new Set(crops)].map(
    (crop) => `The label does not let ${crop} follow: one of its conditions is not met.`,
  );
};
