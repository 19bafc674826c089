import { describe, expect, it } from 'vitest';
import { InvalidInputError } from '../../src/errors.ts';
import { soilWaterCharacteristics } from '../../src/model/water/soilWaterCharacteristics.ts';
import { classTexture, readilyEvaporableWater, textureClassOf } from '../../src/model/water/textureClass.ts';
import { textureGroupOf } from '../../src/model/water/textureGroup.ts';
import { TEXTURE_CLASSES } from '../../src/schema/soil.ts';
import fc from '../fastCheck.ts';

describe('texture classes', () => {
  it.each(TEXTURE_CLASSES)('%s is represented by a soil of its own class', (textureClass) => {
    const { sand, clay } = classTexture(textureClass);
    expect(textureClassOf(sand, clay)).toBe(textureClass);
  });

  it('gives one of the twelve classes for any sand and clay that fit in a whole', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, (sand, rest) => {
        expect(TEXTURE_CLASSES).toContain(textureClassOf(sand, rest * (1 - sand)));
      }),
      { numRuns: 2000 },
    );
  });

  // The triangle's own rules, each written as the region it claims, on every whole per cent.
  it('agrees with the definition of each class on every whole per cent', () => {
    const regions: Record<string, (sand: number, silt: number, clay: number) => boolean> = {
      sand: (_, silt, clay) => silt + 1.5 * clay < 15,
      'loamy sand': (_, silt, clay) => silt + 1.5 * clay >= 15 && silt + 2 * clay < 30,
      'sandy loam': (sand, silt, clay) =>
        silt + 2 * clay >= 30 && ((clay >= 7 && clay < 20 && sand > 52) || (clay < 7 && silt < 50)),
      loam: (sand, silt, clay) => clay >= 7 && clay < 27 && silt >= 28 && silt < 50 && sand <= 52,
      'silt loam': (_, silt, clay) =>
        (silt >= 50 && clay >= 12 && clay < 27) || (silt >= 50 && silt < 80 && clay < 12),
      silt: (_, silt, clay) => silt >= 80 && clay < 12,
      'sandy clay loam': (sand, silt, clay) => clay >= 20 && clay < 35 && silt < 28 && sand > 45,
      'clay loam': (sand, _, clay) => clay >= 27 && clay < 40 && sand > 20 && sand <= 45,
      'silty clay loam': (sand, _, clay) => clay >= 27 && clay < 40 && sand <= 20,
      'sandy clay': (sand, _, clay) => clay >= 35 && sand > 45,
      'silty clay': (_, silt, clay) => clay >= 40 && silt >= 40,
      clay: (sand, silt, clay) => clay >= 40 && sand <= 45 && silt < 40,
    };
    for (let sand = 0; sand <= 100; sand++) {
      for (let clay = 0; clay <= 100 - sand; clay++) {
        const claimed = Object.keys(regions).filter((name) => regions[name](sand, 100 - sand - clay, clay));
        expect(claimed, `${sand} % sand, ${clay} % clay`).toEqual([textureClassOf(sand / 100, clay / 100)]);
      }
    }
  });

  it('refuses shares that do not fit in a whole', () => {
    expect(() => textureClassOf(0.7, 0.4)).toThrow('sand plus clay');
    expect(() => textureClassOf(-0.1, 0.4)).toThrow('sand is -0.1');
    expect(() => textureClassOf(Number.NaN, 0.4)).toThrow('sand is NaN');
  });

  it('has a readily evaporable water inside the published range of each class that has one', () => {
    const published: [(typeof TEXTURE_CLASSES)[number], number, number][] = [
      ['sand', 2, 7],
      ['loamy sand', 4, 8],
      ['sandy loam', 6, 10],
      ['loam', 8, 10],
      ['silt loam', 8, 11],
      ['silt', 8, 11],
      ['silty clay loam', 8, 11],
      ['silty clay', 8, 12],
      ['clay', 8, 12],
    ];
    for (const [textureClass, low, high] of published) {
      expect(readilyEvaporableWater(textureClass)).toBe((low + high) / 2);
    }
  });
});

describe('soil water characteristics', () => {
  it('keep wilting point, field capacity and saturation in order for ordinary farm soils', () => {
    for (const textureClass of TEXTURE_CLASSES) {
      for (let organicMatterPercent = 0.5; organicMatterPercent <= 6; organicMatterPercent += 0.5) {
        const water = soilWaterCharacteristics({ ...classTexture(textureClass), organicMatterPercent });
        expect(water.thetaWiltingPoint).toBeGreaterThan(0);
        expect(water.thetaFieldCapacity).toBeGreaterThan(water.thetaWiltingPoint);
        expect(water.thetaSaturation).toBeGreaterThan(water.thetaFieldCapacity);
        expect(water.saturatedConductivityMmPerHour).toBeGreaterThan(0);
        expect(water.bulkDensity).toBeCloseTo(2.65 * (1 - water.thetaSaturation), 12);
      }
    }
  });

  it('come out in order or are refused, over the whole range of the regressions', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    let answered = 0;
    fc.assert(
      fc.property(share, share, share, (a, b, c) => {
        const clay = 0.6 * a;
        const soil = { clay, sand: b * (1 - clay), organicMatterPercent: 8 * c };
        try {
          const water = soilWaterCharacteristics(soil);
          expect(water.thetaWiltingPoint).toBeGreaterThan(0);
          expect(water.thetaFieldCapacity).toBeGreaterThan(water.thetaWiltingPoint);
          expect(water.thetaSaturation).toBeGreaterThan(water.thetaFieldCapacity);
          expect(water.saturatedConductivityMmPerHour).toBeGreaterThan(0);
          answered += 1;
        } catch (error) {
          expect(error).toMatchObject({ code: 'SOIL_OUTSIDE_REGRESSIONS' });
        }
      }),
      { numRuns: 3000 },
    );
    expect(answered).toBeGreaterThan(2700);
  });

  it('are refused for pure sand without clay or organic matter', () => {
    expect(() => soilWaterCharacteristics({ sand: 1, clay: 0, organicMatterPercent: 0 })).toThrow(
      InvalidInputError,
    );
  });

  it.each([
    [{ sand: 0.1, clay: 0.65, organicMatterPercent: 2 }, 'clay is 0.65'],
    [{ sand: 0.7, clay: 0.5, organicMatterPercent: 2 }, 'sand plus clay'],
    [{ sand: 0.4, clay: 0.2, organicMatterPercent: 9 }, 'organicMatterPercent is 9'],
  ])('refuse a soil outside the range of the regressions', (soil, message) => {
    expect(() => soilWaterCharacteristics(soil)).toThrow(message);
  });
});

it.each(TEXTURE_CLASSES)(
  '%s is fine from 35 %% clay on, and coarse where it is mostly sand',
  (textureClass) => {
    const { sand, clay } = classTexture(textureClass);
    expect(textureGroupOf(textureClass)).toBe(
      clay >= 0.35 ? 'fine' : sand - clay > 0.5 ? 'coarse' : 'medium',
    );
  },
);
