import { describe, expect, it } from 'vitest';
import { phCaution } from '../../src/app/phCaution.ts';
import { readQuestion } from '../../src/app/readQuestion.ts';
import { resolveQuestion } from '../../src/app/resolveQuestion.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { questionSchema } from '../../src/schema/question.ts';
import { catalogue } from '../catalogue/loaded.ts';

const resolve = (change: Record<string, unknown>) =>
  resolveQuestion(readQuestion(questionSchema, { ...demoQuestion, ...change }), catalogue);

describe('soil pH', () => {
  it('lengthens the half-life of chlorsulfuron on alkaline ground, and says so', () => {
    const resolved = resolve({ residual: 'chlorsulfuron', crop: 'sorghum', soilPh: 7.5 });
    expect(resolved.application.siteFactor).toBeCloseTo(2.4 ** 0.8, 10);
    expect(phCaution(resolved)).toContain('At pH 7.5 its half-life is multiplied by 2.01.');
    const beyond = resolve({ residual: 'chlorsulfuron', crop: 'sorghum', soilPh: 9 });
    expect(beyond.application.siteFactor).toBeCloseTo(2.4 ** 1.4, 10);
    expect(phCaution(beyond)).toContain('the factor of pH 8.1');
  });

  it('applies no factor without a pH, nor where only the direction is known', () => {
    const untold = resolve({ residual: 'chlorsulfuron', crop: 'sorghum' });
    expect(untold.application.siteFactor).toBe(1);
    expect(phCaution(untold)).toContain('was not given');
    const words = resolve({ residual: 'imazamox', soilPh: 5.5 });
    expect(words.application.siteFactor).toBe(1);
    expect(phCaution(words)).toContain('no factor is applied');
    expect(phCaution(resolve({ soilPh: 5.5 }))).toBeNull();
  });
});

describe('an active without a half-life', () => {
  const bare = { residual: 'quizalofop', crop: 'corn' };
  it('is answered at full rate on bare soil, where the half-life cancels', () => {
    expect(resolve(bare).halfLife).toEqual({ halfLifeDays: null, halfLifeOrigin: 'none' });
  });

  it.each([{ rateFraction: 0.5 }, { overlapFactor: 2 }, { canopyFraction: 0.4 }])(
    'is refused with %o',
    (load) => {
      expect(() => resolve({ ...bare, ...load })).toThrow(
        expect.objectContaining({
          code: 'HALF_LIFE_MISSING',
          message: expect.stringContaining('only full rate on bare soil'),
        }),
      );
      expect(resolve({ ...bare, ...load, halfLifeDays: 30 }).halfLife.halfLifeOrigin).toBe('own entry');
    },
  );

  it('needs none where the interval is zero', () => {
    expect(resolve({ ...bare, crop: 'soybean', rateFraction: 0.5 }).interval.lengthDays).toBe(0);
  });
});

describe('the country of the field', () => {
  it('decides whose label rows set the date', () => {
    const us = resolve({ residual: 'imazamox', crop: 'canola' });
    const canada = resolve({ residual: 'imazamox', crop: 'canola', country: 'CA' });
    expect([us.interval.months, canada.interval.months]).toEqual([26, 11]);
    expect(us.longerElsewhere[0]).toContain('Labels of Canada give 11 months');
    expect(() => resolve({ country: 'CA' })).toThrow(/Labels of the United States give 3 months to 4 months/);
    expect(() => resolve({ country: 'AU' })).toThrow(/^Country/);
  });

  it('says which rows stand in for a crop without one', () => {
    const { interval, intervalRemarks } = resolve({ residual: 'imazethapyr', crop: 'lentil' });
    expect(interval.months).toBe(40);
    expect(intervalRemarks).toEqual([
      { code: 'interval-fallback', text: expect.stringContaining('does not name') },
    ]);
    expect(resolve({}).intervalRemarks).toEqual([]);
  });

  it('says that a source gives its length "or more"; the user’s own interval stands by itself', () => {
    const pair = { residual: 'sulfosulfuron', crop: 'sorghum' };
    expect(resolve(pair).intervalRemarks).toEqual([
      { code: 'interval-at-least', text: expect.stringContaining('22 months or more') },
    ]);
    expect(resolve({ ...pair, interval: '22 months' }).intervalRemarks).toEqual([]);
  });
});

describe('field findings that ask for longer', () => {
  const pair = { residual: 'chlorsulfuron', crop: 'lentil' };

  it('stand beside an interval of the user’s own, and set nothing', () => {
    const { longerElsewhere, interval } = resolve({ ...pair, interval: '9 months' });
    expect(interval).toMatchObject({ months: 9, confirmed: true });
    expect(longerElsewhere).toHaveLength(2);
    expect(longerElsewhere[0]).toMatch(
      /^Beside the label: a field finding from southern Alberta asks for 84 months or more \(/,
    );
    expect(resolve({ ...pair, interval: '48 months' }).longerElsewhere).toHaveLength(1);
    expect(resolve({ ...pair, interval: '7 years' }).longerElsewhere).toEqual([]);
  });

  it('are told where no label gives a length', () => {
    expect(() => resolve(pair)).toThrow(
      /read your label\. Beside the label: a field finding .* asks for 84 months/,
    );
  });
});
