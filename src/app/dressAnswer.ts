import { isoDateOf } from '../calendar.ts';
import type { Answer } from '../schema/answer.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { LabelCondition } from '../schema/labelCondition.ts';
import type { StoredLabel } from '../schema/labelEntry.ts';
import type { StationWeather } from './climateCache.ts';
import { conditionCautions } from './conditionCautions.ts';
import { countingWindowsOf } from './countingWindows.ts';
import { fieldLabelDay } from './fieldTreatments.ts';
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
  const forbidding = [treatment, ...besides].flatMap(({ conditions }) => conditions).find(forbids);
  return {
    ...answer,
    advice: forbidding
      ? `The label does not let ${answer.inputs.crop} follow: one of its conditions is not met. ${answer.advice}`
      : answer.advice,
    conditions: [...treatment.conditions, ...besides.flatMap(conditionsBeside)],
    countingWindows: countingWindowsOf(question, weather, catalogue),
    mix: [],
    cautions: [
      ...conditionCautions(treatment, answer, stored),
      ...answer.cautions,
      ...besides.flatMap((other) => besideCautions(other, answer)),
      ...tradeCautions(treatment, weather),
    ],
    inputs: { ...answer.inputs, labelEntry: stored },
  };
}

/** A condition of the label itself that has failed and without which the crop may not be sown. */
const forbids = ({ setsDate, state, otherwise, kind }: LabelCondition): boolean =>
  setsDate && state === 'not met' && otherwise === 'not allowed' && kind !== 'startingRain';

const nameOf = ({ resolved: { treatmentName, question } }: Treatment): string =>
  `${treatmentName} of ${sayDate(question.appliedOn)}`;

/** Conditions of another treatment of the field, named. */
const conditionsBeside = (other: Treatment): LabelCondition[] =>
  other.conditions.map((one) => ({ ...one, text: `${nameOf(other)}: ${one.text}` }));

const besideCautions = (other: Treatment, answer: BareAnswer): Answer['cautions'] =>
  conditionCautions(other, { ...answer, labelDate: isoDateOf(fieldLabelDay(other.resolved)) }, null).map(
    (one) => ({ ...one, text: `${nameOf(other)}: ${one.text}` }),
  );
