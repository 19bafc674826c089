import { describe, expect, it } from 'vitest';
import { warmthFactors } from '../../src/model/run/breakdownSums.ts';
import { newColumns, reusedColumns } from '../../src/model/run/columns.ts';
import { dailyForcing } from '../../src/model/run/dailyForcing.ts';
import { soilRun } from '../../src/model/run/soilRun.ts';
import { startDepletionOf } from '../../src/model/run/wetnessRun.ts';
import { topsoilLayer } from '../../src/model/water/topsoilLayer.ts';
import { prepareSeries } from '../../src/model/weather/prepareSeries.ts';
import { generatedRecord } from '../bench/generatedRecord.ts';

const layer = topsoilLayer({ textureClass: 'loam' }, 2, 0.6);
const response = { q10: 2.2, moisture: 'dryness', moistureExponent: 0.5, snowStopsMm: 5 } as const;

describe('columns of a run', () => {
  it('are the same figures to the last bit, whatever a column held before', () => {
    const reused = reusedColumns();
    const run = (seed: number, years: number, columns = newColumns) => {
      const series = prepareSeries(generatedRecord(seed, years));
      const { waterMm, et0Mm, soilTempC, snowMm } = dailyForcing(series, 45, 2.74, columns);
      const warmth = warmthFactors(soilTempC, snowMm, response, columns);
      return soilRun(waterMm, et0Mm, warmth, layer, response, startDepletionOf(layer), columns);
    };
    for (const [seed, years] of [
      [1, 3],
      [2, 1],
      [3, 5],
    ]) {
      reused.reset();
      const again = run(seed, years, reused);
      const fresh = run(seed, years);
      expect(again.sums).toEqual(fresh.sums);
      expect(again.depletionMm).toEqual(fresh.depletionMm);
      expect(fresh.sums[fresh.sums.length - 1]).toBeGreaterThan(10 * years);
    }
  });

  it('grow to the longest asked for and are handed out anew after a reset', () => {
    const columns = reusedColumns();
    const first = columns.take(10);
    expect(columns.take(10).buffer).not.toBe(first.buffer);
    columns.reset();
    expect(columns.take(8).buffer).toBe(first.buffer);
    columns.reset();
    expect(columns.take(1000)).toHaveLength(1000);
  });
});
