import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { regionRows } from '../../src/app/region.ts';
import { regionTable } from '../../src/app/regionTable.ts';
import type { WeatherReader } from '../../src/app/weatherReader.ts';
import { isoDateOf } from '../../src/calendar.ts';
import { regionCollection, regionFeature } from '../../src/chart/regionFeature.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import type { QuestionInput } from '../../src/schema/question.ts';
import { type RegionInput, type RegionRow, regionEventSchema } from '../../src/schema/region.ts';
import { readUsStates } from '../../src/source/usStateOf.ts';
import { generatedRecord } from '../bench/generatedRecord.ts';
import { catalogue } from '../catalogue/loaded.ts';

const records = [1, 2, 3, 4, 5].map((number) => generatedRecord(number, number === 5 ? 6 : 18));
records[3] = { ...records[3], maxTempTenthsC: new Int32Array(records[3].rainTenthsMm.length).fill(ABSENT) };
const weather: WeatherReader = {
  stations: async () =>
    records.map(({ station, firstDay, rainTenthsMm, source }) => ({
      ...station,
      firstDate: isoDateOf(firstDay),
      lastDate: isoDateOf(firstDay + rainTenthsMm.length - 1),
      rainDays: rainTenthsMm.length,
      temperatureDays: rainTenthsMm.length,
      source,
    })),
  async record(id) {
    const found = records.find(({ station }) => station.id === id);
    if (!found) throw new Error(`no ${id}`);
    return found;
  },
};
const question = {
  ...{ residual: 'imazethapyr', crop: 'lentil', interval: '9 months' },
  ...{ appliedOn: '2025-08-10', plantOn: '2026-05-10', asOf: '2025-12-15' },
};
const deps = { version: '1', catalogue, weather, stateOf: readUsStates };

async function rowsOf(change: Partial<RegionInput> = {}): Promise<RegionRow[]> {
  const rows: RegionRow[] = [];
  for await (const event of regionRows({ ...question, ...change }, deps)) {
    regionEventSchema.parse(event);
    if (event.step === 'rows') rows.push(...event.rows);
  }
  return rows;
}

describe('a region', () => {
  it('has a row for each station, those that cannot answer with the reason', async () => {
    const rows = await rowsOf();
    expect(rows.map(({ station, code }) => [station, code])).toEqual([
      ['GEN00000001', null],
      ['GEN00000002', null],
      ['GEN00000003', null],
      ['GEN00000004', 'TEMPERATURES_MISSING'],
      ['GEN00000005', 'TOO_FEW_YEARS'],
    ]);
    expect(rows[4].reason).toContain('usable');
  });

  it('gives each station the same to the last bit, whichever came before it', async () => {
    const together = await rowsOf();
    for (const row of [...together].reverse()) {
      const { latitudeDeg: north, longitudeDeg: east } = row;
      const box = { west: east ?? 0, east: east ?? 0, south: north ?? 0, north: north ?? 0 };
      expect(await rowsOf({ box })).toEqual([row]);
    }
  });

  it('gives the figures of the whole answer at each station', async () => {
    const answerDeps = { catalogue, climates: createClimateCache(weather), version: '1' };
    for (const { station, figures } of (await rowsOf()).slice(0, 3)) {
      const asked: QuestionInput = { ...question, station };
      const now = await answerField(asked, answerDeps);
      const normal = await answerField({ ...asked, asOf: undefined }, answerDeps);
      expect(figures?.oddsNow).toBeCloseTo(now.oddsAtPlanting ?? -1, 10);
      expect(figures?.oddsNormal).toBeCloseTo(normal.oddsAtPlanting ?? -1, 10);
      expect(figures?.oddsRange.low).toBeCloseTo(now.oddsRange?.low ?? -1, 10);
      expect(figures?.clearDate).toBe(now.clearDate);
      expect(figures?.labelDate).toBe(now.labelDate);
      expect(figures?.years).toBe(now.oddsRange?.years);
      const late = normal.years.filter(({ clearDate }) => clearDate === null || clearDate > normal.labelDate);
      expect(figures?.labelTooShortShare).toBeCloseTo(late.length / normal.years.length, 10);
    }
  });

  it('holds the summer’s rain against other summers and the published sums', async () => {
    const [{ figures }] = await rowsOf();
    const { firstDay, rainTenthsMm } = records[0];
    const summer = figures?.summerRain;
    expect([summer?.fromDate, summer?.throughDate]).toEqual(['2025-06-01', '2025-08-31']);
    const start = 20240 - firstDay;
    expect(isoDateOf(20240)).toBe('2025-06-01');
    const known = rainTenthsMm.slice(start, start + 92).filter((tenths) => tenths >= 0);
    const sum = known.reduce((all, tenths) => all + tenths / 10, 0);
    expect(summer?.mm).toBeGreaterThanOrEqual(sum - 1e-9);
    expect(summer?.mm).toBeLessThan(sum * 1.15);
    const [counted] = figures?.counted ?? [];
    expect(counted.id).toBe('W01');
    expect(counted.complete).toBe(true);
    expect(counted.under).toBe(counted.sumMm < counted.thresholdMm);
  });

  it('plans only where the record ends before the as-of day, and says so', async () => {
    const [row] = await rowsOf({ asOf: '2026-02-01' });
    expect(row.figures?.oddsNow).toBeNull();
    expect(row.notNow).toBe('The record ends on 2025-12-31.');
    expect(row.figures?.oddsNormal).toBeGreaterThan(0);
  });

  it('takes a soil of its own for a station that has one', async () => {
    const [plain, other] = await rowsOf();
    const [sand, same] = await rowsOf({ soilByStation: { [plain.station]: 'sand' } });
    expect([plain.soilClass, sand.soilClass]).toEqual(['loam', 'sand']);
    expect(sand.figures?.oddsNormal).toBeGreaterThan(plain.figures?.oddsNormal ?? 1);
    expect(same).toEqual(other);
  });

  it('looks at a box or at states only, and refuses where there is nothing to look at', async () => {
    const { latitudeDeg, longitudeDeg } = records[1].station;
    const [lat, lon] = [latitudeDeg ?? 0, longitudeDeg ?? 0];
    const box = { west: lon - 0.1, east: lon + 0.1, south: lat - 0.05, north: lat + 0.05 };
    expect((await rowsOf({ box })).map(({ station }) => station)).toEqual(['GEN00000002']);
    await expect(rowsOf({ states: ['ND'] })).rejects.toThrow('lies in that region');
    await expect(rowsOf({ residual: 'glyphosate', interval: '1 month' })).rejects.toThrow('No carryover');
  });

  it('stops when asked', async () => {
    const events = regionRows(question, deps, AbortSignal.abort());
    await events.next();
    await expect(events.next()).rejects.toThrow('stopped');
  });

  it('says where the stations lie when none lies in the states asked for', async () => {
    const inland = { ...deps, stateOf: async () => () => 'ND' };
    const away = regionRows({ ...question, states: ['OR'] }, inland).next();
    await expect(away).rejects.toMatchObject({
      code: 'STATIONS_NONE',
      hint: 'Stations that are here lie in ND. Import records of stations there, or widen the region.',
    });
  });

  it('refuses letters that are no state with those that may have been meant', async () => {
    const nowhere = (state: string) => regionRows({ ...question, states: [state] }, deps).next();
    const refused = { code: 'STATE_UNKNOWN', hint: 'Did you mean MT?' };
    await expect(nowhere('TM')).rejects.toMatchObject(refused);
    const like = { code: 'STATE_UNKNOWN', hint: 'Did you mean TN or TX?' };
    await expect(nowhere('TT')).rejects.toMatchObject(like);
    const none = { code: 'STATE_UNKNOWN', hint: expect.stringMatching(/^Did you mean TX\?/) };
    await expect(nowhere('XX')).rejects.toMatchObject(none);
  });

  it('becomes features and a table', async () => {
    const rows = await rowsOf();
    expect(regionFeature(rows[0])).toMatchObject({
      type: 'Feature',
      id: 'GEN00000001',
      geometry: { type: 'Point', coordinates: [-119.3, 32.1, 300] },
    });
    const first = await regionRows(question, deps).next();
    if (first.done || first.value.step !== 'start') throw new Error('no start');
    const start = first.value;
    const columns = regionTable(['W01'], start);
    const cells = Object.fromEntries(columns.map(({ name, cell }) => [name, cell(rows[0])]));
    expect(cells.asked).toBe(
      'imazethapyr sprayed 2025-08-10 before lentil planted 2026-05-10, weather up to 2025-12-15',
    );
    expect(cells.model).toBe('drywake residual persistence 1');
    expect(regionCollection(start, rows)).toMatchObject({
      type: 'FeatureCollection',
      about: { residual: 'imazethapyr', question: { plantOn: '2026-05-10' }, model: { version: '1' } },
      features: [{ id: 'GEN00000001' }, {}, {}, {}, {}],
    });
    expect(cells.odds_now).toBe(rows[0].figures?.oddsNow);
    expect(cells.w01_mm).toBe(rows[0].figures?.counted[0].sumMm);
    expect(columns.filter(({ cell }) => cell(rows[4]) === undefined)).toEqual([]);
  });
});

describe('states by place', () => {
  it('tells the state of well-known places, and none at sea', async () => {
    const stateOf = await readUsStates();
    expect(stateOf(45.68, -111.04)).toBe('MT');
    expect(stateOf(46.85, -97.2)).toBe('ND');
    expect(stateOf(21.47, -157.98)).toBe('HI');
    expect(stateOf(36, -60)).toBeNull();
  });
});
