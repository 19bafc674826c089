import { describe, expect, it } from 'vitest';
import { breakdownRecord } from '../../src/analysis/breakdownRecord.ts';
import { historicalYears } from '../../src/analysis/historicalYears.ts';
import { seasonTraces, type TraceOptions } from '../../src/analysis/traces.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { topsoilLayer } from '../../src/model/water/topsoilLayer.ts';
import { RAIN_FILLED } from '../../src/schema/codes.ts';
import { TEXTURE_CLASSES } from '../../src/schema/soil.ts';
import { assumptions, plainApplication } from '../cases/seasonOf.ts';
import fc from '../fastCheck.ts';
import { climateOfSeries, inventedSeries } from './inventedWeather.ts';

const APPLIED = parseIsoDate('2008-08-10');
const { response } = plainApplication;

describe('a trace spliced out of the record', () => {
  it('is the one that is run day by day', () => {
    const weather = fc.record({
      seed: fc.integer({ min: 1, max: 1e9 }),
      wetShare: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
      wetDayMm: fc.double({ min: 1, max: 12, noNaN: true }),
      meanTempC: fc.double({ min: -3, max: 20, noNaN: true }),
    });
    const layers = fc
      .tuple(fc.constantFrom(...TEXTURE_CLASSES), fc.double({ min: 0, max: 1, noNaN: true }))
      .map(([textureClass, cover]) => topsoilLayer({ textureClass }, 2, cover));
    const observed = fc.integer({ min: 1, max: 400 });
    const missing = fc.array(fc.integer({ min: 0, max: 300 }), { maxLength: 4 });
    fc.assert(
      fc.property(weather, layers, observed, missing, (w, layer, observedDays, gaps) => {
        const series = inventedSeries(w);
        for (const day of gaps) series.rainOrigin[APPLIED - series.firstDay + day] = RAIN_FILLED;
        const climate = climateOfSeries(series);
        const record = breakdownRecord(climate, layer, response, assumptions);
        const years = historicalYears(climate, APPLIED, 500, {});
        const options: TraceOptions = {
          start: APPLIED - series.firstDay,
          observedDays,
          restOfSeasonRain: 1,
          irrigation: { firstOffset: 0, amountsMm: new Float64Array() },
          horizonDays: 900,
          meltMmPerDegreeDay: 2.74,
          basis: assumptions,
        };
        // A rest of the season within rounding of 1 takes the long way.
        const long = { ...options, restOfSeasonRain: 1 + Number.EPSILON };
        const spliced = seasonTraces(climate, record, layer, response, years, options);
        const run = seasonTraces(climate, record, layer, response, years, long);
        for (const [index, trace] of spliced.entries()) {
          const other = run[index];
          expect(trace.lastOffset).toBe(other.lastOffset);
          for (let offset = 0; offset <= trace.lastOffset; offset++) {
            const got = trace.sums[trace.base + offset] - trace.sums[trace.base];
            const wanted = other.sums[other.base + offset] - other.sums[other.base];
            if (Math.abs(got - wanted) > 1e-9) expect(got, `offset ${offset}`).toBe(wanted);
          }
          const rain = trace.liquidRainMm(0, trace.lastOffset);
          const otherRain = other.liquidRainMm(0, other.lastOffset);
          expect(rain).toHaveLength(otherRain.length);
          const apart = rain.reduce((worst, mm, day) => Math.max(worst, Math.abs(mm - otherRain[day])), 0);
          expect(apart).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('takes each year’s own day where the observed rain has a gap', () => {
    const series = inventedSeries({ seed: 2, wetShare: 0.3, wetDayMm: 5, meanTempC: 9 });
    const rainOrigin = new Uint8Array(series.days);
    rainOrigin[APPLIED - series.firstDay + 3] = RAIN_FILLED;
    const climate = climateOfSeries({ ...series, rainOrigin });
    const layer = topsoilLayer({ textureClass: 'loam' }, 2, 0.6);
    const record = breakdownRecord(climate, layer, response, assumptions);
    const years = historicalYears(climate, APPLIED, 300, {});
    const traces = seasonTraces(climate, record, layer, response, years, {
      start: APPLIED - series.firstDay,
      observedDays: 30,
      restOfSeasonRain: 1,
      irrigation: { firstOffset: 0, amountsMm: new Float64Array() },
      horizonDays: 300,
      meltMmPerDegreeDay: 2.74,
      basis: assumptions,
    });
    const liquid = traces.map((trace) => trace.liquidRainMm(3, 4)[0]);
    expect(liquid).toEqual(years.map(({ start }) => series.rainMm[start + 3]));
  });
});
