import { describe, expect, it } from 'vitest';
import { editDistance, spellingOf } from '../../src/catalogue/spelling.ts';
import fc from '../fastCheck.ts';

describe('editDistance', () => {
  it.each([
    ['', '', 0],
    ['corn', 'corn', 0],
    ['', 'corn', 4],
    ['lentle', 'lentil', 2],
    ['cron', 'corn', 1],
    ['barly', 'barley', 1],
    ['kitten', 'sitting', 3],
  ])('from "%s" to "%s" is %i', (from, to, slips) => {
    expect(editDistance(from, to)).toBe(slips);
  });

  it('is symmetric, zero only for equals, and at most the longer length', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 }), (from, to) => {
        const slips = editDistance(from, to);
        expect(slips).toBe(editDistance(to, from));
        expect(slips === 0).toBe(from === to);
        expect(slips).toBeLessThanOrEqual(Math.max(from.length, to.length));
        expect(slips).toBeGreaterThanOrEqual(Math.abs(from.length - to.length));
      }),
    );
  });
});

describe('spellingOf', () => {
  it('makes one of case, blanks and hyphens', () => {
    expect(spellingOf('  Sugar-Beet ')).toBe('sugar beet');
    expect(spellingOf('sugar \t BEET')).toBe('sugar beet');
  });
});
