import { describe, expect, it } from 'vitest';
import { hindcast } from '../../src/app/hindcast.ts';
import { labelsAsBook } from '../../src/app/labelBook.ts';
import { hindcastText } from '../../src/cli/hindcastText.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import type { HindcastInput } from '../../src/schema/hindcast.ts';
import type { LabelEntry } from '../../src/schema/labelEntry.ts';
import { refusalOf } from '../refusal.ts';
import { demoDeps } from './demoDeps.ts';

const entry: LabelEntry = {
  id: 'mine',
  name: 'My two',
  actives: [{ name: 'flumioxazin' }, { name: 'imazethapyr' }],
  intervals: [{ crop: 'lentil', interval: '5 months', clauses: [], conditions: '' }],
  labelVersion: '2026-01',
  enteredOn: '2026-02-01',
  note: '',
};
const single: LabelEntry = { ...entry, id: 'one', name: 'My one', actives: [{ name: 'flumioxazin' }] };
const labels = labelsAsBook([entry, single].map((one) => ({ version: 1, entry: one })));
const lookBack = (change: Partial<HindcastInput>) =>
  hindcast(
    { ...demoQuestion, baseFrom: 1995, baseTo: 2010, leadDays: [90], ...change },
    { ...demoDeps, labels },
  );

describe('a hindcast', () => {
  it('rests on an own label entry as the odds do, and needs no active beside it', async () => {
    const byEntry = await lookBack({ residual: undefined, labelEntry: 'one' });
    const byHand = await lookBack({ interval: '5 months' });
    expect(byEntry.question).toMatchObject({ labelEntry: 'one', residual: 'flumioxazin' });
    expect(byEntry.labelEntries).toEqual([{ id: 'one', name: expect.stringMatching(/\w/) }]);
    expect(hindcastText(byEntry)).toContain(`By your own label ${byEntry.labelEntries[0].name} [one].`);
    expect(byEntry.years).toEqual(byHand.years);
    expect(byEntry.overall).toEqual(byHand.overall);
    expect(byEntry.overall).not.toEqual((await lookBack({})).overall);
  });

  it('judges all actives of the entry: a second one never makes a past year safer', async () => {
    const [one, two] = [await lookBack({ labelEntry: 'one' }), await lookBack({ labelEntry: 'mine' })];
    expect(two.years.map(({ year }) => year)).toEqual(one.years.map(({ year }) => year));
    for (const [index, { probability }] of two.years.entries())
      expect(probability).toBeGreaterThanOrEqual(one.years[index].probability - 1e-12);
    expect(two.overall.baseRate).toBeGreaterThan(one.overall.baseRate);
  });

  it('judges the field’s other treatments with it, and the plan begins with the first of them', async () => {
    const otherTreatments = [
      { appliedOn: '2026-06-01', residual: 'imazethapyr', interval: '4 months', labelEntry: undefined },
    ];
    const [alone, both] = [
      await lookBack({ leadDays: [300] }),
      await lookBack({ leadDays: [300], otherTreatments }),
    ];
    expect(both.overall.baseRate).toBeGreaterThanOrEqual(alone.overall.baseRate);
    expect([alone.leads[0].plan, both.leads[0].plan]).toEqual([true, false]);
  });

  it('refuses an entry that is not there, and a question that names no product', async () => {
    expect(await refusalOf(lookBack({ labelEntry: 'nothing' }))).toMatchObject({ code: 'LABEL_UNKNOWN' });
    expect(await refusalOf(lookBack({ residual: undefined }))).toMatchObject({
      code: 'QUESTION_UNREADABLE',
      details: { field: 'residual' },
    });
  });
});
