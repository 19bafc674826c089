import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ABSENT } from '../../src/schema/codes.ts';
import type { UnitSystem } from '../../src/schema/readOptions.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { inferUnits } from '../../src/source/inferUnits.ts';
import { UnitEvidence } from '../../src/source/unitEvidence.ts';
import { describeWithRecords } from '../sharedWeather.ts';

const PRINTED: Record<UnitSystem, { rain(tenths: number): string; temperature(tenths: number): string }> = {
  us: { rain: (n) => (n / 254).toFixed(2), temperature: (n) => String(Math.round(n * 0.18 + 32)) },
  metric: { rain: (n) => String(n / 10), temperature: (n) => String(n / 10) },
  tenths: { rain: String, temperature: String },
};

/** What a window of a record, printed in some units, shows of them. */
function evidenceOf(
  record: StationRecord,
  from: number,
  days: number,
  units: UnitSystem,
  temperatures: boolean,
) {
  const evidence = new UnitEvidence();
  const add = (tally: UnitEvidence['rain'], tenths: number, print: (tenths: number) => string) => {
    if (tenths !== ABSENT) tally.add(print(tenths), Number(print(tenths)), 1);
  };
  for (let day = from; day < from + days; day++) {
    add(evidence.rain, record.rainTenthsMm[day], PRINTED[units].rain);
    if (!temperatures) continue;
    add(evidence.temperature, record.maxTempTenthsC[day], PRINTED[units].temperature);
    add(evidence.temperature, record.minTempTenthsC[day], PRINTED[units].temperature);
  }
  return evidence;
}

describeWithRecords('units told from windows of real records', (folder) => {
  it.each([
    ['derived', 'USC00241044'],
    ['derived', 'USW00023066'],
    ['ghcnd', 'USW00003870'],
  ])('%s/%s: never the wrong ones, and the right ones for most years', async (part, id) => {
    const record = await createFileReader([join(folder, part, `${id}.dly.gz`)]).record(id);
    const told: Record<string, number> = { us: 0, metric: 0, tenths: 0 };
    const windows = 40;
    for (const units of ['us', 'metric', 'tenths'] as const) {
      for (const days of [5, 10, 30, 90, 365]) {
        const step = Math.floor((record.rainTenthsMm.length - days) / windows);
        for (let from = 0; from < windows * step; from += step) {
          for (const temperatures of [true, false]) {
            const { open } = inferUnits(evidenceOf(record, from, days, units, temperatures));
            if (open.length === 1) expect(open[0], `${days} days from ${from}`).toBe(units);
            if (open.length === 1 && days === 365 && temperatures) told[units]++;
          }
        }
      }
    }
    for (const count of Object.values(told)) expect(count).toBeGreaterThanOrEqual(0.9 * windows);
  });
});
