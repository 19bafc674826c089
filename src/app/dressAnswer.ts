import type { Answer } from '../schema/answer.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { StoredLabel } from '../schema/labelEntry.ts';
import type { StationWeather } from './climateCache.ts';
import { conditionCautions } from './conditionCautions.ts';
import { countingWindowsOf } from './countingWindows.ts';
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
): Answer {
  const { question } = treatment.resolved;
  return {
    ...answer,
    advice: [...forbiddenWords([treatment]), answer.advice].join(' '),
    conditions: [...treatment.conditions],
    countingWindows: countingWindowsOf(question, weather, catalogue),
    mix: [],
    cautions: [
      ...conditionCautions(treatment, stored),
      ...answer.cautions,
      ...tradeCautions(treatment, weather),
    ],
    inputs: { ...answer.inputs, labelEntry: stored },
  };
}

/** A sentence for each treatment whose label does not let its crop follow, as things stand. */
export const forbiddenWords = (treatments: readonly Treatment[]): string[] =>
  treatments
    .filter(({ resolved }) => resolved.labelForbids)
    .map(
      ({ resolved }) =>
        `The label does not let ${resolved.cropName} follow: one of its conditions is not met.`,
    );
