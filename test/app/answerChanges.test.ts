import { describe, expect, it } from 'vitest';
import { answerChanges, largestFirst } from '../../src/app/answerChanges.ts';
import { sayIn } from '../../src/app/say.ts';
import type { LastAnswer } from '../../src/schema/fieldAnswer.ts';

const answer = (change: Partial<LastAnswer> = {}): LastAnswer => ({
  on: '2026-11-25',
  crop: 'lentil',
  plantOn: '2027-05-10',
  labelDate: '2027-05-01',
  clearDate: '2027-05-01',
  oddsAtPlanting: 0.05,
  conditions: [{ name: 'At least 25 mm of rain', state: 'open' }],
  ...change,
});
const condition = (state: LastAnswer['conditions'][number]['state']) => [
  { name: 'At least 25 mm of rain', state },
];
const told = (was: LastAnswer, is: LastAnswer) =>
  answerChanges(
    { fieldId: 'f', planId: 'p' },
    'Home quarter, lentil on May 10, 2027',
    was,
    is,
    { conditions: [] },
    sayIn(),
  );

describe('what is told of a change', () => {
  it('is nothing where little has changed, or the question is another', () => {
    expect(told(answer(), answer({ oddsAtPlanting: 0.149, on: '2026-11-26' }))).toEqual([]);
    expect(told(answer(), answer({ oddsAtPlanting: 0.9, crop: 'pea' }))).toEqual([]);
    expect(told(answer(), answer({ oddsAtPlanting: 0.9, plantOn: '2027-05-11' }))).toEqual([]);
  });

  it('is odds that moved by more than ten points, either way', () => {
    const [up] = told(answer({ oddsAtPlanting: 0.29 }), answer({ oddsAtPlanting: 0.44 }));
    expect(up.why).toBe('odds moved');
    expect(up.text).toBe(
      'Home quarter, lentil on May 10, 2027: the odds have risen from about 6 in 20 to about 9 in 20.',
    );
    const [down] = told(answer({ oddsAtPlanting: 0.44 }), answer({ oddsAtPlanting: 0.29 }));
    expect(down.text).toContain('have fallen from');
  });

  it('is a condition newly met or failed, and not one that was so before', () => {
    expect(told(answer(), answer({ conditions: condition('met') }))).toMatchObject([
      { why: 'condition newly met', text: expect.stringContaining('(At least 25 mm of rain)') },
    ]);
    expect(told(answer(), answer({ conditions: condition('not met') }))).toMatchObject([
      { why: 'condition failed' },
    ]);
    const failed = answer({ conditions: condition('not met') });
    expect(told(failed, failed)).toEqual([]);
  });

  it('is a clear date that has come to lie past planting, once', () => {
    const late = answer({ clearDate: '2027-06-02' });
    expect(told(answer(), late)).toMatchObject([
      {
        why: 'clear date past planting',
        text: 'Home quarter, lentil on May 10, 2027: the clear date is now June 2, 2027, after the planting date.',
      },
    ]);
    expect(told(answer(), answer({ clearDate: null }))[0].text).toContain('no clear date is in sight');
    expect(told(late, answer({ clearDate: '2027-07-01' }))).toEqual([]);
    expect(told(late, answer())).toEqual([]);
  });
});

it('changes stand largest first, and of one size the graver reason first', () => {
  const by = (from: number, to: number, change: Partial<LastAnswer> = {}) =>
    told(answer({ oddsAtPlanting: from }), answer({ oddsAtPlanting: to, ...change }));
  const changes = [
    ...by(0.05, 0.2),
    ...by(0.05, 0.05, { conditions: condition('met') }),
    ...by(0.9, 0.2),
    ...by(0.05, 0.5, { clearDate: null, conditions: condition('not met') }),
  ];
  expect(
    largestFirst(changes).map(({ why, is, was }) => [why, was.oddsAtPlanting, is.oddsAtPlanting]),
  ).toEqual([
    ['odds moved', 0.9, 0.2],
    ['clear date past planting', 0.05, 0.5],
    ['condition failed', 0.05, 0.5],
    ['odds moved', 0.05, 0.5],
    ['odds moved', 0.05, 0.2],
    ['condition newly met', 0.05, 0.05],
  ]);
});

it('knows a condition by its name and tells it in the words asked for', () => {
  const told = {
    conditions: [{ name: 'At least 25 mm of rain', state: 'met', text: 'At least 1.0 in of rain: met.' }],
  };
  const [change] = answerChanges(
    { fieldId: 'f', planId: 'p' },
    'Home quarter, lentil on 2027-05-10',
    answer(),
    answer({ conditions: condition('met') }),
    told as never,
    sayIn({ dates: 'iso' }),
  );
  expect(change.text).toBe(
    'Home quarter, lentil on 2027-05-10: a label condition is met now (At least 1.0 in of rain).',
  );
});
