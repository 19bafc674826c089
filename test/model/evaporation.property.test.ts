import { describe, expect, it } from 'vitest';
import { evaporationCoefficient } from '../../src/model/water/evaporationCoefficient.ts';
import { evaporationReduction } from '../../src/model/water/evaporationReduction.ts';
import { hargreavesEt0 } from '../../src/model/water/hargreavesEt0.ts';
import { mulchFactor } from '../../src/model/water/mulchFactor.ts';
import { soilWaterCharacteristics } from '../../src/model/water/soilWaterCharacteristics.ts';
import { classTexture, readilyEvaporableWater } from '../../src/model/water/textureClass.ts';
import { totalEvaporableWater } from '../../src/model/water/totalEvaporableWater.ts';
import { TEXTURE_CLASSES } from '../../src/schema/soil.ts';
import fc from '../fastCheck.ts';
import { topLayerDays } from '../published/topLayerDays.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const soil = fc.record({
  textureClass: fc.constantFrom(...TEXTURE_CLASSES),
  organicMatterPercent: between(0, 6),
});

/** TEW and REW of a soil for the layer of 0.15 m. [mm] */
function layerOf({
  textureClass,
  organicMatterPercent,
}: {
  textureClass: (typeof TEXTURE_CLASSES)[number];
  organicMatterPercent: number;
}) {
  const { thetaFieldCapacity, thetaWiltingPoint } = soilWaterCharacteristics({
    ...classTexture(textureClass),
    organicMatterPercent,
  });
  const tewMm = totalEvaporableWater(thetaFieldCapacity, thetaWiltingPoint, 0.15);
  return { tewMm, rewMm: readilyEvaporableWater(textureClass) };
}

const day = fc.record({ et0Mm: between(0, 14), kcb: fc.constant(0.15), rainMm: between(0, 80) });

describe('top-layer evaporation', () => {
  it('has a reduction factor between 0 and 1 that never rises with depletion', () => {
    fc.assert(
      fc.property(soil, between(0, 1), between(0, 1), (anySoil, a, b) => {
        const { tewMm, rewMm } = layerOf(anySoil);
        const wet = evaporationReduction(Math.min(a, b) * tewMm, tewMm, rewMm);
        const dry = evaporationReduction(Math.max(a, b) * tewMm, tewMm, rewMm);
        expect(wet).toBeLessThanOrEqual(1);
        expect(dry).toBeGreaterThanOrEqual(0);
        expect(dry).toBeLessThanOrEqual(wet);
      }),
    );
  });

  it('allows a readily evaporable water no larger than the total in every class', () => {
    fc.assert(
      fc.property(soil, (anySoil) => {
        const { tewMm, rewMm } = layerOf(anySoil);
        expect(rewMm).toBeLessThan(tewMm);
      }),
    );
  });

  it('keeps depletion between 0 and TEW and closes the water balance each day', () => {
    fc.assert(
      fc.property(
        soil,
        between(0, 1),
        fc.array(day, { minLength: 1, maxLength: 60 }),
        (anySoil, start, days) => {
          const { tewMm, rewMm } = layerOf(anySoil);
          const startDepletionMm = start * tewMm;
          const run = topLayerDays(days, { tewMm, rewMm, kcMax: 1.2, startDepletionMm });
          let before = startDepletionMm;
          days.forEach(({ rainMm }, i) => {
            const after = run.depletionEndMm[i];
            expect(after).toBeGreaterThanOrEqual(0);
            expect(after).toBeLessThanOrEqual(tewMm);
            // What the layer can really give up is bounded by TEW; the rest of E is not drawn from it.
            const drawnMm = Math.min(run.evaporationMm[i], tewMm - run.depletionStartMm[i]);
            expect(after - before).toBeCloseTo(drawnMm + run.percolationMm[i] - rainMm, 9);
            before = after;
          });
        },
      ),
    );
  });

  it('never ends drier after more rain, on any day that follows', () => {
    fc.assert(
      fc.property(
        soil,
        between(0, 1),
        fc.array(fc.tuple(day, between(0, 40)), { minLength: 1, maxLength: 40 }),
        (anySoil, start, rows) => {
          const { tewMm, rewMm } = layerOf(anySoil);
          const options = { tewMm, rewMm, kcMax: 1.2, startDepletionMm: start * tewMm };
          const less = topLayerDays(
            rows.map(([d]) => d),
            options,
          ).depletionEndMm;
          const more = topLayerDays(
            rows.map(([d, extra]) => ({ ...d, rainMm: d.rainMm + extra })),
            options,
          ).depletionEndMm;
          more.forEach((depletion, i) => {
            expect(depletion).toBeLessThanOrEqual(less[i] + 1e-9);
          });
        },
      ),
    );
  });

  it('has a coefficient under both of its limits', () => {
    fc.assert(
      fc.property(between(0, 1), between(0, 1), between(0, 0.15), (kr, exposedWettedFraction, kcb) => {
        const ke = evaporationCoefficient({ kr, kcMax: 1.2, kcb, exposedWettedFraction });
        expect(ke).toBeGreaterThanOrEqual(0);
        expect(ke).toBeLessThanOrEqual(1.2 - kcb);
        expect(ke).toBeLessThanOrEqual(1.2 * exposedWettedFraction);
      }),
    );
  });

  it('has a demand that is never negative and never falls with warmth at the same range', () => {
    fc.assert(
      fc.property(
        between(-45, 45),
        between(0, 30),
        between(0, 45),
        between(0, 10),
        (minimum, range, ra, warmer) => {
          const cool = hargreavesEt0(minimum + range, minimum, ra);
          const warm = hargreavesEt0(minimum + range + warmer, minimum + warmer, ra);
          expect(cool).toBeGreaterThanOrEqual(0);
          expect(warm).toBeGreaterThanOrEqual(cool - 1e-6);
        },
      ),
    );
  });

  it('is halved at most by a full cover, and not at all without one', () => {
    expect([mulchFactor(0), mulchFactor(0.6), mulchFactor(1)]).toEqual([1, 0.7, 0.5]);
    expect(() => mulchFactor(1.1)).toThrow('coverFraction is 1.1; it must be from 0 to 1.');
  });
});
