import { describe, expect, it } from 'vitest';
import { compareResiduals } from '../../src/app/compareResiduals.ts';
import { cropByDate } from '../../src/app/cropByDate.ts';
import { type SeasonInCommon, sharedSeasons } from '../../src/app/sharedSeasons.ts';
import type { ComparisonInput } from '../../src/schema/comparison.ts';
import { demoDeps } from './demoDeps.ts';

const asked: ComparisonInput = {
  station: 'demo-invented',
  crop: 'lentil',
  appliedOn: '2026-08-14',
  plantOn: '2027-05-10',
};

/** One after the other, so that each meets what the ones before have left. */
const QUESTIONS: readonly (readonly [what: string, change: Partial<ComparisonInput>])[] = [
  ['the first', {}],
  ['another crop', { crop: 'canola' }],
  ['a later date', { plantOn: '2028-05-20' }],
  ['another odds limit', { oddsLimit: 0.2 }],
  ['an outlook', { outlook: { belowPercent: 50, nearPercent: 30, abovePercent: 20 } }],
  [
    'the outlook, another date',
    { plantOn: '2027-06-01', outlook: { belowPercent: 50, nearPercent: 30, abovePercent: 20 } },
  ],
  ['the season under way', { asOf: '2026-09-15' }],
  ['half the rate', { rateFraction: 0.5 }],
  ['spray on leaves', { canopyFraction: 0.4 }],
  ['another treatment', { otherTreatments: [{ residual: 'flumioxazin', appliedOn: '2026-09-01' }] }],
  ['the first again', {}],
];

describe('seasons that questions share', () => {
  it('give the figures of seasons of their own, to the last bit', async () => {
    const seasons = sharedSeasons();
    for (const [what, change] of QUESTIONS) {
      const question = { ...asked, ...change };
      expect(await compareResiduals(question, { ...demoDeps, seasons }), what).toEqual(
        await compareResiduals(question, demoDeps),
      );
      const { crop: _, plantOn, ...rest } = question;
      const grid = { ...rest, residual: 'imazethapyr', plantFrom: plantOn, plantTo: plantOn };
      expect(await cropByDate(grid, { ...demoDeps, seasons }), what).toEqual(
        await cropByDate(grid, demoDeps),
      );
    }
  });

  it('are let go before they gather much', async () => {
    const kept = sharedSeasons();
    const handedOut = new Set<SeasonInCommon>();
    const seasons: typeof kept = {
      of(...args) {
        const season = kept.of(...args);
        handedOut.add(season);
        return season;
      },
    };
    for (let turn = 0; turn < 90; turn++) {
      await compareResiduals({ ...asked, rateFraction: 1 - turn / 100 }, { ...demoDeps, seasons });
    }
    expect(handedOut.size).toBeGreaterThan(1);
    expect(handedOut.size).toBeLessThan(10);
    for (const { known } of handedOut) expect(known.size).toBeLessThanOrEqual(2000);
  });
});
