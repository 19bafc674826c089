import { describe, expect, it } from 'vitest';
import { LIGHT_TOKENS } from '../../src/chart/theme.ts';
import { timesText, whyRowAt, whyRows, whyWaterfall } from '../../src/chart/whyWaterfall.ts';
import { answer } from './fixture.ts';

const options = { tokens: LIGHT_TOKENS, description: 'Reasons.', widthPx: 640 };
const why = (calendar: number, warmth: number, rain: number, dose: number, soil: number) => ({
  ...answer.why,
  ...{ calendar, warmth, rain, dose, soil, whole: calendar * warmth * rain * dose * soil },
});

describe('the rows of the waterfall', () => {
  it('go on from each other and end at the whole', () => {
    const rows = whyRows(why(0.5, 1.25, 3, 1, 2));
    const [whole, ...steps] = rows.toReversed();
    expect(steps.reverse().map(({ from }) => from)).toEqual([1, 0.5, 0.625, 1.875, 1.875]);
    expect(steps.at(-1)?.to).toBe(3.75);
    expect([whole.from, whole.to, whole.factor]).toEqual([1, 3.75, 3.75]);
  });

  it('end at the whole that the answer gives', () => {
    const rows = whyRows(answer.why);
    expect(rows.at(-2)?.to).toBeCloseTo(answer.why.whole ?? Number.NaN, 12);
  });

  it('are none where there are no factors', () => {
    const none = { calendar: null, warmth: null, rain: null, dose: null, soil: null, whole: null };
    expect(whyRows({ ...answer.why, ...none })).toEqual([]);
  });
});

describe('a height of the drawing', () => {
  it('is that of a row, from the first to the last, and of none beyond', () => {
    const rows = whyRows(answer.why);
    const { height } = whyWaterfall(rows, options);
    const at = (yPx: number) => whyRowAt(rows, yPx)?.key ?? null;
    expect([at(0), at(7), at(53), at(6 + Number(height) - 1), at(7 + Number(height))]).toEqual([
      null,
      'calendar',
      'warmth',
      'whole',
      null,
    ]);
  });
});

describe('the waterfall', () => {
  it('tells what asks for more from what asks for less, and draws a factor of 1 as a tick', () => {
    const { datasets } = whyWaterfall(whyRows(why(0.5, 1, 3, 1, 2)), options);
    const keys = (name: string) => datasets[name].map((row) => (row as { key: string }).key);
    expect([keys('more'), keys('less'), keys('plain')]).toEqual([
      ['rain', 'soil'],
      ['calendar'],
      ['warmth', 'dose'],
    ]);
  });

  it('keeps its axis readable however long the reasons reach', () => {
    for (const factor of [0.01, 1, 40, 3000]) {
      const spec = whyWaterfall(whyRows(why(factor, 1, 1, 1, 1)), options);
      const { x } = (spec.layer[0] as { encoding: { x: { axis: { values: number[] }; scale: object } } })
        .encoding;
      expect(x.axis.values.length).toBeGreaterThanOrEqual(2);
      expect(x.axis.values.length).toBeLessThanOrEqual(6);
      const [low, high] = (x.scale as { domain: [number, number] }).domain;
      expect(low).toBeLessThanOrEqual(Math.min(1, factor));
      expect(high).toBeGreaterThanOrEqual(Math.max(1, factor));
    }
  });

  it('writes factors with as many digits as they can bear', () => {
    expect([0.778, 6.55, 10.33, 233.4].map(timesText)).toEqual(['× 0.78', '× 6.55', '× 10.3', '× 233']);
  });
});
