import { describe, expect, it } from 'vitest';
import { groundForcing } from '../../src/model/run/dailyForcing.ts';
import { snowMelt } from '../../src/model/water/snowMelt.ts';
import { prepareSeries } from '../../src/model/weather/prepareSeries.ts';
import { generatedRecord } from '../bench/generatedRecord.ts';

const MELT = 2.74;

describe('snow', () => {
  it('melts by the degree-day form, never more than there is, and not at or under 0 °C', () => {
    expect(snowMelt(10, 2, MELT)).toBeCloseTo(5.48, 12);
    expect(snowMelt(3, 2, MELT)).toBe(3);
    expect(snowMelt(10, 0, MELT)).toBe(0);
    expect(snowMelt(10, -5, MELT)).toBe(0);
  });

  it('keeps the balance: what fell has reached the ground or still lies on it', () => {
    const { rainMm: rain, maxTempC, minTempC } = prepareSeries(generatedRecord(7, 4));
    const temps = Float64Array.from(maxTempC, (max, day) => (max + minTempC[day]) / 2);
    const { waterMm, snowMm } = groundForcing(rain, temps, 0, 12, MELT);
    let fallen = 12;
    let reached = 0;
    let snowiest = 0;
    for (let day = 0; day < rain.length; day++) {
      fallen += rain[day];
      reached += waterMm[day];
      snowiest = Math.max(snowiest, snowMm[day]);
      expect(reached + snowMm[day]).toBeCloseTo(fallen, 8);
      expect(snowMm[day]).toBeGreaterThanOrEqual(0);
    }
    expect(snowiest).toBeGreaterThan(12);
  });
});
