import { describe, expect, it } from 'vitest';
import { moistureResponse } from '../../src/model/breakdown/moistureResponse.ts';
import { temperatureResponse } from '../../src/model/breakdown/temperatureResponse.ts';
import { walkerMoistureResponse } from '../../src/model/breakdown/walkerMoistureResponse.ts';
import { type BreakdownResponse, breakdownSums, warmthFactors } from '../../src/model/run/breakdownSums.ts';
import { soilRun } from '../../src/model/run/soilRun.ts';
import { startDepletionOf, wetnessRun } from '../../src/model/run/wetnessRun.ts';
import { topsoilLayer } from '../../src/model/water/topsoilLayer.ts';
import { depletionAfterWater, evaporationOfDay } from '../../src/model/water/topsoilWaterDay.ts';
import { TEXTURE_CLASSES } from '../../src/schema/soil.ts';
import { climateOfSeries, inventedSeries } from '../analysis/inventedWeather.ts';

const { forcing } = climateOfSeries(inventedSeries({ seed: 5, wetShare: 0.15, wetDayMm: 6, meanTempC: 7 }));
const { waterMm, et0Mm, soilTempC, snowMm } = forcing;

const dryness: BreakdownResponse = { q10: 2.58, moisture: 'dryness', moistureExponent: 0.47, snowStopsMm: 5 };
const walker: BreakdownResponse = { ...dryness, moisture: 'walker', moistureExponent: 0.7 };

describe('water and breakdown in one pass', () => {
  it.each(TEXTURE_CLASSES.flatMap((soil) => [dryness, walker].map((response) => [soil, response] as const)))(
    'follows the one-day equations on %s',
    (textureClass, response) => {
      const layer = topsoilLayer({ textureClass }, 2, 0.3);
      const warmth = warmthFactors(soilTempC, snowMm, response);
      const run = soilRun(waterMm, et0Mm, warmth, layer, response, startDepletionOf(layer));
      const airDry = 0.5 * layer.thetaWiltingPoint;
      let depletion = startDepletionOf(layer);
      let sum = 0;
      for (let day = 0; day < waterMm.length; day++) {
        const wetted = depletionAfterWater(depletion, waterMm[day]);
        depletion = wetted + evaporationOfDay(wetted, et0Mm[day], layer);
        const wetness = 1 - (wetted + depletion) / (2 * layer.tewMm);
        const moisture =
          response.moisture === 'dryness'
            ? moistureResponse(wetness, response.moistureExponent)
            : walkerMoistureResponse(
                airDry + wetness * (layer.thetaFieldCapacity - airDry),
                layer.thetaFieldCapacity,
                response.moistureExponent,
              );
        const warm = snowMm[day] > 5 ? 0 : temperatureResponse(soilTempC[day], response.q10);
        sum += warm * moisture;
        if (Math.abs(run.depletionMm[day] - depletion) > 1e-10) expect(run.depletionMm[day]).toBe(depletion);
      }
      expect(Math.abs(run.sums[waterMm.length] / sum - 1)).toBeLessThan(1e-7);
      expect(run.sums[0]).toBe(0);
    },
  );

  it('agrees with its two parts run one after the other', () => {
    const layer = topsoilLayer({ textureClass: 'loam' }, 2, 0.6);
    const warmth = warmthFactors(soilTempC, snowMm, dryness);
    const run = soilRun(waterMm, et0Mm, warmth, layer, dryness, startDepletionOf(layer));
    const { wetness } = wetnessRun(waterMm, et0Mm, layer, startDepletionOf(layer));
    const sums = breakdownSums(warmth, wetness, layer, dryness);
    const apart = run.sums.reduce((worst, sum, day) => Math.max(worst, Math.abs(sum - sums[day])), 0);
    expect(apart).toBeLessThan(1e-6);
  });
});
