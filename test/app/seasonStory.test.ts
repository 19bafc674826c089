import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { isoDateOf, parseIsoDate } from '../../src/calendar.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import type { QuestionInput } from '../../src/schema/question.ts';
import { demoDeps } from './demoDeps.ts';

const question: QuestionInput = {
  ...demoQuestion,
  appliedOn: '2025-08-14',
  plantOn: '2026-05-10',
  asOf: '2026-02-20',
};
const ask = (change: Partial<QuestionInput> = {}) =>
  answerField({ ...question, ...change }, demoDeps, { season: true });
const storyOf = async (change: Partial<QuestionInput> = {}) => {
  const { season, ...answer } = await ask(change);
  if (season === undefined) throw new Error('the season was asked for');
  return { answer, story: season.story };
};

describe('the story of the season', () => {
  it('begins with the plan and ends with the answer; each week is the question as of that day', async () => {
    const { answer, story } = await storyOf();
    const { weeks } = story;
    expect(weeks[0]).toEqual({
      observedThrough: null,
      odds: (await ask({ asOf: undefined })).oddsAtPlanting,
    });
    expect(weeks.at(-1)).toEqual({ observedThrough: '2026-02-20', odds: answer.oddsAtPlanting });
    for (const index of [1, 9, weeks.length - 2]) {
      const { observedThrough, odds } = weeks[index];
      expect(observedThrough).toBe(isoDateOf(parseIsoDate('2025-08-14') + 7 * index - 1));
      expect((await ask({ asOf: observedThrough ?? undefined })).oddsAtPlanting).toBe(odds);
    }
  });

  it('of a season of many years is told in steps of several weeks, leaves or not', async () => {
    for (const canopyFraction of [0, 0.3]) {
      const long = { appliedOn: '1990-08-14', plantOn: '2026-05-10', canopyFraction };
      const { answer, story } = await storyOf(long);
      expect(story.weeks.length).toBeGreaterThan(100);
      expect(story.weeks.length).toBeLessThanOrEqual(158);
      expect(story.weeks.at(-1)).toEqual({ observedThrough: '2026-02-20', odds: answer.oddsAtPlanting });
      const { observedThrough, odds } = story.weeks[40];
      expect((await ask({ ...long, asOf: observedThrough ?? undefined })).oddsAtPlanting).toBe(odds);
    }
  });

  it('knows evidence from its own day on', async () => {
    const evidence = [{ kind: 'bioassay' as const, on: '2026-01-15', injured: true }];
    const plain = await storyOf();
    const found = await storyOf({ evidence });
    for (const [index, week] of found.story.weeks.entries()) {
      const before = plain.story.weeks[index];
      const known = (week.observedThrough ?? '') >= '2026-01-14';
      expect(week.odds > before.odds, week.observedThrough ?? 'plan').toBe(known);
    }
    expect(found.story.weeks.at(-1)?.odds).toBe(found.answer.oddsAtPlanting);
  });

  it('a delay is the question with that date, and its gains add up', async () => {
    const { answer, story } = await storyOf();
    expect(story.delay).toHaveLength(12);
    for (const index of [0, 5, 11]) {
      const { plantOn, odds, weeks } = story.delay[index];
      expect(plantOn).toBe(isoDateOf(parseIsoDate('2026-05-10') + 7 * weeks));
      expect((await ask({ plantOn })).oddsAtPlanting).toBeCloseTo(odds, 12);
    }
    const gained = story.delay.reduce((sum, { gain }) => sum + gain, 0);
    expect(gained).toBeCloseTo((answer.oddsAtPlanting ?? 0) - story.delay[11].odds, 12);
  });

  it('measures rain and breakdown against normal, and tells nothing while planning', async () => {
    const { story } = await storyOf();
    const { breakdown, rainShortfallMm } = story;
    expect(breakdown?.shortfall).toBeCloseTo((breakdown?.normal ?? 0) - (breakdown?.toDate ?? 0), 12);
    expect(breakdown?.toDate).toBeGreaterThan(0);
    expect(rainShortfallMm).not.toBeNull();
    const plan = await storyOf({ asOf: undefined });
    expect(plan.story).toMatchObject({ weeks: [], breakdown: null, rainShortfallMm: null });
    expect(plan.story.delay).toHaveLength(12);
  });

  it('stops moving once the crop is in', async () => {
    const { answer, story } = await storyOf({ asOf: '2026-07-31' });
    const lastWeeks = story.weeks.slice(-2);
    expect(lastWeeks[1]).toEqual({ observedThrough: '2026-07-31', odds: answer.oddsAtPlanting });
    expect((lastWeeks[0].observedThrough ?? '') < '2026-05-10').toBe(true);
  });
});
