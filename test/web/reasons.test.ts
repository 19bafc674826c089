import { describe, expect, it } from 'vitest';
import { oddsLimitOf } from '../../src/app/oddsLimitHelper.ts';
import { countWords, sumWords } from '../../web/src/reasons/conditionWords.ts';
import { readStakes } from '../../web/src/reasons/stakes.ts';
import { delayFinding, storyFinding, storyRows, toDateWords } from '../../web/src/reasons/storyWords.ts';
import { whyFinding } from '../../web/src/reasons/whyFinding.ts';
import { typedDates } from '../../web/src/units/dates.ts';
import { answer } from '../chart/fixture.ts';
import fc from '../fastCheck.ts';

const us = typedDates('us');

const { story } = answer.season;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('the odds limit of the page', () => {
  it('is that of the program, whatever the figures', () => {
    const money = fc.double({ min: 0.01, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(money, money, (costOfWaiting, lossAvoided) => {
        const reading = readStakes({ cost: `${costOfWaiting}`, loss: `${lossAvoided}` });
        if (costOfWaiting >= lossAvoided) {
          expect(reading).toHaveProperty('problem');
          expect(() => oddsLimitOf({ costOfWaiting, lossAvoided })).toThrow();
        } else expect(reading).toEqual({ limit: oddsLimitOf({ costOfWaiting, lossAvoided }) });
      }),
    );
  });

  it('waits for both figures, and refuses what is no amount of money', () => {
    expect(readStakes({ cost: '', loss: '160' })).toBeNull();
    expect(readStakes({ cost: '$20', loss: '160' })).toEqual({ limit: 0.125 });
    for (const cost of ['much', '0', '-4', 'Infinity']) {
      expect(readStakes({ cost, loss: '160' })).toHaveProperty('problem');
    }
  });
});

describe('the reasons in words', () => {
  it('name the heaviest and the whole', () => {
    expect(whyFinding(answer.why)).toBe(
      'The heaviest reason is rain and soil moisture, × 1.45; all together make × 1.20.',
    );
    const even = { calendar: 1, warmth: 1, rain: 1, dose: 1, soil: 1, whole: 1 };
    expect(whyFinding({ ...answer.why, ...even })).toContain('Nothing sets this season apart');
    expect(whyFinding({ ...answer.why, ...even, soil: 3, whole: 3 })).toContain('soil pH, × 3.00');
  });

  it('name the worst part where there are parts', () => {
    const none = { calendar: null, warmth: null, rain: null, dose: null, soil: null, whole: null };
    const part = { application: 1, residual: 'flumioxazin', appliedOn: '2026-08-14', oddsWithout: 0 };
    const parts = [
      { ...part, where: 'ground' as const, oddsWith: 0.1 },
      { ...part, where: 'leaves' as const, oddsWith: 0.3 },
    ];
    expect(whyFinding({ ...answer.why, ...none, parts })).toBe(
      'What fell on leaves counts most: about 6 in 20 by itself.',
    );
  });
});

describe('the story in words', () => {
  it('says which way the odds went, or what waiting gains', () => {
    expect(plain(storyFinding(story, answer.plantOn, us))).toMatch(
      /^Since spraying the odds for May 10 have risen, from about 4 in 20 to about 5 in 20\.$/,
    );
    expect(plain(storyFinding({ ...story, weeks: [] }, answer.plantOn, us))).toBe(
      plain(delayFinding(story.delay)),
    );
    expect(plain(delayFinding(story.delay))).toBe('A week later would be about 4 in 20: 0.9 in 20 gained.');
    expect(delayFinding([])).toContain('ends before');
  });

  it('says how far rain and breakdown lag or lead', () => {
    expect(toDateWords({ ...story, rainShortfallMm: 25.4 }, 'us')[0]).toBe(
      'Rain since spraying is 1.00 in short of normal.',
    );
    expect(toDateWords({ ...story, rainShortfallMm: -12 }, 'metric')[0]).toContain('12 mm above normal');
    expect(toDateWords({ ...story, rainShortfallMm: null, breakdown: null }, 'us')).toEqual([]);
  });

  it('lists every week known and every week of waiting, with what each changed', () => {
    const rows = storyRows(story, answer.plantOn);
    expect(rows.length).toBe(story.weeks.length + story.delay.length);
    expect(rows[0]).toMatchObject({ about: 'as planned', date: null, change: null });
    const total = rows.slice(1, story.weeks.length).reduce((sum, { change }) => sum + (change ?? 0), 0);
    expect(total).toBeCloseTo(story.weeks[story.weeks.length - 1].odds - story.weeks[0].odds, 9);
  });
});

describe('conditions and counting rules in words', () => {
  const rule = {
    ...{
      id: 'W01',
      kind: 'threshold' as const,
      advice: 'a',
      region: 'r',
      source: 's',
      mark: 'seen' as const,
    },
    ...{ from: '2026-06-01', to: '2026-09-01', thresholdMm: 152.4, range: null },
  };

  it('count the states', () => {
    const states = ['met', 'open', 'met', 'not met'].map((state) => ({ state }) as never);
    expect(countWords(states)).toBe('4 conditions: 2 met, 1 not met, 1 open');
    expect(countWords(states.slice(0, 1))).toBe('One condition: 1 met');
  });

  it('say the sum so far, in the units of the page, and the odds only while it is open', () => {
    const done = { ...rule, sumMm: 101.6, through: '2026-09-01', state: 'under' as const, oddsUnder: 1 };
    expect(sumWords(done, 'us', us)).toBe('June 1 to September 1: 4.00 in, against 6.00 in, under.');
    const open = { ...done, through: '2026-07-15', state: 'open' as const, oddsUnder: 0.5 };
    expect(sumWords(open, 'metric', us)).toBe(
      'June 1 to September 1: 102 mm by July 15, against 152 mm, still open. Odds of staying under: about 10 in 20.',
    );
    const none = { ...open, sumMm: null, through: null };
    expect(sumWords(none, 'us', us)).toContain('nothing observed yet, against 6.00 in');
    expect(sumWords({ ...none, thresholdMm: null }, 'us', us)).toBe('');
  });
});
