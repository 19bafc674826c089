import { describe, expect, it } from 'vitest';
import { injuryProbability } from '../../src/model/evidence/bioassayLikelihood.ts';
import { logResidue } from '../../src/model/evidence/logResidue.ts';
import { soilTestLogLikelihood } from '../../src/model/evidence/soilTestLikelihood.ts';

const trust = { sensitivity: 0.9, specificity: 0.9, spread: 0.35 };

describe('injuryProbability', () => {
  it('is 0.5 at the harmful level, and runs from 1 − specificity to the sensitivity', () => {
    expect(injuryProbability(0, trust)).toBeCloseTo(0.5, 12);
    expect(injuryProbability(-20, trust)).toBeCloseTo(0.1, 12);
    expect(injuryProbability(20, trust)).toBeCloseTo(0.9, 12);
    // 0.1 + 0.8·Φ(1) with Φ(1) = 0.841344746 from tables.
    expect(injuryProbability(0.35, trust)).toBeCloseTo(0.1 + 0.8 * 0.841344746, 8);
  });

  it('refuses trust that is none', () => {
    expect(() => injuryProbability(0, { ...trust, sensitivity: 0.4 })).toThrow('sensitivity');
    expect(() => injuryProbability(0, { ...trust, specificity: 1.1 })).toThrow('specificity');
    expect(() => injuryProbability(0, { ...trust, spread: 0 })).toThrow('spread');
  });
});

describe('logResidue', () => {
  const parts = [
    { logExcess: Math.log(2), decayExponent: 1 },
    { logExcess: Math.log(0.5), decayExponent: 0.2 },
  ];

  it('is the logarithm of the sum of what decays at the soil’s own speed', () => {
    for (const z of [-2, 0, 1.5]) {
      const speed = Math.exp(0.35 * z);
      const sum = 2 * Math.exp(-speed) + 0.5 * Math.exp(-0.2 * speed);
      expect(logResidue(parts, 0.35, z)).toBeCloseTo(Math.log(sum), 12);
    }
    expect(logResidue(parts.slice(0, 1), 0.35, 0)).toBeCloseTo(Math.log(2) - 1, 12);
    expect(logResidue([], 0.35, 0)).toBe(Number.NEGATIVE_INFINITY);
  });

  it('does not vanish where every part is tiny', () => {
    const tiny = parts.map((part) => ({ ...part, logExcess: part.logExcess - 2000 }));
    expect(logResidue(tiny, 0.35, 0)).toBeCloseTo(logResidue(parts, 0.35, 0) - 2000, 8);
  });
});

describe('soilTestLogLikelihood', () => {
  it('is ln-normal about what the model expects, with the variance of its cv', () => {
    const variance = Math.log(1 + 0.3 ** 2);
    expect(soilTestLogLikelihood(0.2, Math.log(0.2), 0.3)).toBeCloseTo(0, 14);
    const oneOff = soilTestLogLikelihood(0.2 * Math.exp(Math.sqrt(variance)), Math.log(0.2), 0.3);
    expect(oneOff).toBeCloseTo(-0.5, 12);
  });

  it('refuses a residue of nothing and a cv outside its range', () => {
    expect(() => soilTestLogLikelihood(0, 0, 0.3)).toThrow('measured fraction');
    expect(() => soilTestLogLikelihood(0.2, 0, 0)).toThrow('coefficient');
  });
});
