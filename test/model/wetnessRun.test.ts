import { describe, expect, it } from 'vitest';
import { wetnessRun } from '../../src/model/run/wetnessRun.ts';
import { evaporationReduction } from '../../src/model/water/evaporationReduction.ts';
import { type TopsoilLayer, topsoilLayer } from '../../src/model/water/topsoilLayer.ts';
import { TEXTURE_CLASSES } from '../../src/schema/soil.ts';
import fc from '../fastCheck.ts';
import cases from '../published/evaporation.json' with { type: 'json' };

const layerOf = fc
  .tuple(
    fc.constantFrom(...TEXTURE_CLASSES),
    fc.double({ min: 0.5, max: 5, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
  )
  .map(([textureClass, organicMatter, cover]) => topsoilLayer({ textureClass }, organicMatter, cover));
const dayOf = fc.record({
  waterMm: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 80, noNaN: true })),
  et0Mm: fc.double({ min: 0, max: 9, noNaN: true }),
});

describe('the daily topsoil recursion', () => {
  it('walks down the published bare-loam drying table (FAO-56 example 31)', () => {
    const published: { id: string; expected: Record<string, unknown> }[] = cases.cases;
    const ends = published.find(({ id }) => id === 'C-EV-1')?.expected.depletionEndMm as number[];
    expect(ends.length).toBe(10);
    const layer: TopsoilLayer = {
      tewMm: 20,
      rewMm: 9,
      wetEvaporationCoefficient: 1.05,
      thetaFieldCapacity: 0.3,
      thetaWiltingPoint: 0.1,
    };
    const { depletionMm } = wetnessRun(new Float64Array(10), new Float64Array(10).fill(4.5), layer, 0);
    ends.forEach((end, day) => {
      expect(Math.abs(depletionMm[day] - end)).toBeLessThanOrEqual(0.006);
    });
  });

  it('closes the water balance on every day and keeps depletion and wetness in bounds', () => {
    fc.assert(
      fc.property(layerOf, fc.array(dayOf, { minLength: 1, maxLength: 60 }), (layer, days) => {
        const water = Float64Array.from(days, (day) => day.waterMm);
        const et0 = Float64Array.from(days, (day) => day.et0Mm);
        const { depletionMm, wetness } = wetnessRun(water, et0, layer, layer.tewMm / 2);
        let before = layer.tewMm / 2;
        days.forEach(({ waterMm, et0Mm }, day) => {
          const percolation = Math.max(0, waterMm - before);
          const afterWater = Math.max(0, before - waterMm);
          const wanted =
            layer.wetEvaporationCoefficient *
            evaporationReduction(afterWater, layer.tewMm, layer.rewMm) *
            et0Mm;
          const evaporation = Math.min(wanted, layer.tewMm - afterWater);
          expect(depletionMm[day] - before).toBeCloseTo(evaporation + percolation - waterMm, 9);
          expect(depletionMm[day]).toBeGreaterThanOrEqual(0);
          expect(depletionMm[day]).toBeLessThanOrEqual(layer.tewMm);
          expect(wetness[day]).toBeGreaterThanOrEqual(-1e-12);
          expect(wetness[day]).toBeLessThanOrEqual(1);
          before = depletionMm[day];
        });
      }),
      { numRuns: 200 },
    );
  });
});
