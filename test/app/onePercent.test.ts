import { expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { demoDeps } from './demoDeps.ts';

/** Sentences that hold more than one percentage: two figures of one kind in a breath are taken for each other. */
const crowded = (text: string): string[] =>
  text.split(/(?<=[.!?])\s/).filter((sentence) => (sentence.match(/\d\s?%|per cent/g) ?? []).length > 1);

/** Every text within something, however deep. */
function textsIn(thing: unknown, seen = new Set<unknown>()): string[] {
  if (typeof thing === 'string') return [thing];
  if (typeof thing !== 'object' || thing === null || seen.has(thing)) return [];
  seen.add(thing);
  return [...(thing instanceof Map ? thing.values() : Object.values(thing))].flatMap((part) =>
    textsIn(part, seen),
  );
}

it('no sentence of the catalogue holds two percentages', () => {
  expect(textsIn(catalogue).flatMap(crowded)).toEqual([]);
});

it('no sentence of an answer does, whatever was sprayed', async () => {
  const answers = await Promise.all(
    catalogue.actives.map(({ isoName }) =>
      answerField(
        { ...demoQuestion, residual: isoName, interval: '2 months', halfLifeDays: 60, plantOn: '2027-04-10' },
        demoDeps,
      ),
    ),
  );
  const said = answers.flatMap(({ sentence, advice, cautions, conditions }) => [
    sentence,
    advice,
    ...[...cautions, ...conditions].map(({ text }) => text),
  ]);
  expect(said.flatMap(crowded)).toEqual([]);
  expect(answers.flatMap(({ cautions }) => cautions).map(({ code }) => code)).toContain('season-jump');
});
