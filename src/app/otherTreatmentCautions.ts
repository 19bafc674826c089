import type { Caution } from '../schema/answer.ts';
import { fieldLabelDay } from './fieldTreatments.ts';
import { phCaution } from './phCaution.ts';
import { carriesOver, type ResolvedQuestion } from './resolveQuestion.ts';
import type { Say } from './say.ts';

/** What the field's other treatments ask the user to know; nothing where there are none. */
export function otherTreatmentCautions(resolved: ResolvedQuestion, how: Say): Caution[] {
  if (resolved.beside.length === 0) return [];
  return [
    togetherCaution(resolved),
    ...resolved.beside.flatMap((one) => cautionsOfOne(one.resolved, resolved, how)),
  ];
}

function togetherCaution(resolved: ResolvedQuestion): Caution {
  const carrying = [resolved, ...resolved.beside.map((one) => one.resolved)].filter(carriesOver);
  const groups = carrying.map(({ application }) => application.group);
  const adds = groups.some((group, index) => groups.indexOf(group) !== index);
  return {
    code: 'other-treatments',
    text: adds
      ? 'The field’s treatments are judged together: residues of one mode-of-action group are added up, of different groups the worst governs.'
      : 'The field’s treatments are judged together: they are of different mode-of-action groups, so the worst governs.',
  };
}

function cautionsOfOne(other: ResolvedQuestion, main: ResolvedQuestion, { dates }: Say): Caution[] {
  const { question, treatmentName, interval, active, application } = other;
  const name = `${treatmentName} of ${dates.full(question.appliedOn)}`;
  const cautions: Caution[] = [];
  const say = (code: string, text: string) => cautions.push({ code, text: `${name}: ${text}` });
  if (!carriesOver(other)) say('other-nothing', 'it takes no part, since nothing that counts is left of it.');
  if (!interval.confirmed) {
    say(
      'interval-unconfirmed',
      `its interval of ${interval.text} is ${interval.fromMemory ? 'from memory' : 'a published figure'}; confirm it from its label.`,
    );
  }
  if (interval.disagreement) say('interval-disagreement', interval.disagreement);
  for (const { code, text } of other.intervalRemarks) say(code, text);
  if (application.appliedDay + interval.lengthDays === fieldLabelDay(main)) {
    say('other-label', 'the latest label date of the field is its own.');
  }
  const ph = phCaution(other);
  if (ph) say('ph', ph);
  if (active?.handling && active !== main.active) say('handling', active.handling.replace(/\.?$/, '.'));
  return cautions;
}
