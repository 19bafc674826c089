import { expect, it } from 'vitest';
import { rehearsal } from '../../src/app/rehearsal.ts';
import { sharedSeasons } from '../../src/app/sharedSeasons.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';
import { noOutside } from '../http/noOutside.ts';
import { demoDeps } from './demoDeps.ts';

/** A desk that keeps so many fields, and those that it was asked for the answers of. */
function deskOf(count: number) {
  const asked: string[] = [];
  const kept = Array.from({ length: count }, (_, index) => ({
    ...{ version: 1, canUndo: false, removed: false },
    record: fieldOf({ id: `field-${index}` }),
  }));
  const fields = {
    ...noOutside.desk.fields,
    count: async () => count,
    list: async () => ({ kept, removed: [] }),
  };
  const answers = async (id: string) => {
    asked.push(id);
    return [];
  };
  return { desk: { fields, answers }, asked };
}

it('answers each kind of question, and fields that are few', async () => {
  let climates = 0;
  const of: typeof demoDeps.climates.of = (question) => {
    climates++;
    return demoDeps.climates.of(question);
  };
  const deps = { ...demoDeps, climates: { ...demoDeps.climates, of }, seasons: sharedSeasons() };
  const { desk, asked } = deskOf(3);
  const told = [];
  for (const piece of rehearsal(demoQuestion, deps, desk)) told.push(await piece());
  const texts = told.filter((one) => typeof one === 'string');
  expect(texts.map((text) => Object.keys(JSON.parse(text)))).toEqual(
    [...Array(3)].flatMap(() => [
      expect.arrayContaining(['sentence', 'season']),
      expect.arrayContaining(['residuals']),
      expect.arrayContaining(['crops']),
    ]),
  );
  expect(climates).toBe(9);
  expect(asked).toEqual(['field-0', 'field-1', 'field-2']);
});

it('leaves fields alone where there are many', async () => {
  const { desk, asked } = deskOf(13);
  const pieces = rehearsal(demoQuestion, demoDeps, desk);
  for (const piece of pieces.slice(9)) await piece();
  expect(pieces.length).toBeGreaterThan(9);
  expect(asked).toEqual([]);
});
