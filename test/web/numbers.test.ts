import { describe, expect, it } from 'vitest';
import { readNumber } from '../../web/src/question/readNumber.ts';
import {
  type Quantity,
  rainText,
  shownNumber,
  shownPerStored,
  storedNumber,
} from '../../web/src/units/units.ts';
import fc from '../fastCheck.ts';

const QUANTITIES: Quantity[] = [
  'plain',
  'fraction',
  'twentieths',
  'rain',
  'height',
  'perRain',
  'meltRate',
  'rate',
];

describe('numbers in blanks', () => {
  it('mean the same in either set of units', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...QUANTITIES),
        fc.double({ min: 0.001, max: 5000, noNaN: true }),
        (quantity, stored) => {
          for (const units of ['us', 'metric'] as const) {
            const shown = stored * shownPerStored(quantity, units);
            expect(storedNumber(shown, quantity, units) / stored).toBeCloseTo(1, 10);
            expect(Number(shownNumber(stored, quantity, units)) / shown).toBeCloseTo(1, 3);
          }
        },
      ),
    );
  });

  it('are shown without a tail of digits', () => {
    expect(shownNumber(0.6, 'fraction', 'us')).toBe('60');
    expect(shownNumber(0.1, 'twentieths', 'us')).toBe('2');
    expect(shownNumber(25, 'rain', 'us')).toBe('0.9843');
    expect(shownNumber(1100, 'height', 'us')).toBe('3608.9');
    expect(shownNumber(1100, 'height', 'metric')).toBe('1100');
  });

  it('of rain carry their unit', () => {
    expect(rainText(25.4, 'us')).toBe('1.00 in');
    expect(rainText(25.4, 'metric')).toBe('25 mm');
  });
});

describe('readNumber', () => {
  const plain = { quantity: 'plain', units: 'us' } as const;

  it('reads what is typed and stores it in stored units', () => {
    expect(readNumber(' 2.5 ', plain)).toEqual({ value: 2.5 });
    expect(readNumber('60', { quantity: 'fraction', units: 'us', max: 1 })).toEqual({ value: 0.6 });
    expect(readNumber('1', { quantity: 'rain', units: 'us' })).toEqual({ value: 25.4 });
    expect(readNumber('−3', { ...plain, min: -10 })).toEqual({ value: -3 });
  });

  it('takes an empty blank only where there is a standard value', () => {
    expect(readNumber('', { ...plain, optional: true })).toEqual({ value: undefined });
    expect(readNumber(' ', plain)).toEqual({ problem: 'A number is needed here.' });
  });

  it.each(['1,5', '2 in', 'two', '1e3', '.', '--2'])('refuses "%s"', (text) => {
    expect(readNumber(text, plain)).toEqual({
      problem: `“${text}” is not a number. Write digits only, such as 1.5.`,
    });
  });

  it('names the range in the units that are shown', () => {
    const rule = { quantity: 'fraction', units: 'us', min: 0, max: 1 } as const;
    expect(readNumber('140', rule)).toEqual({
      problem: '140 is out of range: give at least 0 and at most 100.',
    });
    expect(readNumber('0', { ...rule, aboveMin: true })).toEqual({
      problem: '0 is out of range: give more than 0 and at most 100.',
    });
    expect(readNumber('100', rule)).toEqual({ value: 1 });
  });

  it('wants whole numbers where only they count', () => {
    expect(readNumber('12.5', { ...plain, whole: true })).toEqual({ problem: '12.5 is not a whole number.' });
  });
});
