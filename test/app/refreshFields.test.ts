import { expect, it } from 'vitest';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { refreshFields } from '../../src/app/refreshFields.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';
import { openFields, tickingClock } from '../store/openFields.ts';

/** The demo's record up to a date, with other rain from the first of September on. */
function demoUpTo(lastDate: string, rainTenthsMm: number | null) {
  const demo = createDemoReader();
  const cut = async () => {
    const record = await demo.record('demo-invented');
    const days = parseIsoDate(lastDate) - record.firstDay + 1;
    const from = parseIsoDate('2026-09-01') - record.firstDay;
    const column = (values: Int32Array) => values.slice(0, days);
    const rain = column(record.rainTenthsMm);
    if (rainTenthsMm !== null) rain.fill(rainTenthsMm, Math.min(from, days));
    return {
      ...record,
      rainTenthsMm: rain,
      maxTempTenthsC: column(record.maxTempTenthsC),
      minTempTenthsC: column(record.minTempTenthsC),
      multiDayRainTenthsMm: new Int32Array(days).fill(ABSENT),
      multiDayCount: new Int32Array(days).fill(ABSENT),
    };
  };
  return {
    record: cut,
    stations: async () => (await demo.stations()).map((station) => ({ ...station, lastDate })),
  };
}

it('a refresh compares with the last one, keeps what it says, and passes over what has no answer', async () => {
  const store = await openFields();
  const long = { appliedOn: '2026-06-20', residual: 'imazethapyr', interval: '9 months' };
  const field = (id: string, rateFraction: number) =>
    fieldOf({
      ...{ id, name: id, gauge: [], irrigation: [], evidence: [] },
      treatments: [{ id: 't', ...long, rateFraction }],
      plans: [{ id: 'lentil', crop: 'lentil', plantOn: '2027-05-10' }],
    });
  await store.fields.put(field('full', 1), null);
  await store.fields.put(field('half', 0.5), null);
  await store.fields.put(fieldOf({ id: 'no-station', station: null }), null);
  const now = tickingClock();
  const refresh = (lastDate: string, rainTenthsMm: number | null) => {
    const weather = demoUpTo(lastDate, rainTenthsMm);
    return refreshFields(false, {
      store,
      now,
      answer: { version: '1.2.3', catalogue, climates: createClimateCache(weather) },
      weather: { stations: weather.stations, fetch: () => Promise.reject(new Error('not asked for')) },
    });
  };
  const first = await refresh('2026-08-31', null);
  expect([first.answered, first.changes, first.problems.map(({ problem }) => problem.code)]).toEqual([
    ...[2, [], ['FIELD_WITHOUT_STATION', 'FIELD_WITHOUT_STATION']],
  ]);
  const again = await refresh('2026-08-31', null);
  expect(again.changes).toEqual([]);
  const dry = await refresh('2026-09-30', 0);
  const moved = dry.changes.map(({ is, was }) =>
    Math.abs((is.oddsAtPlanting ?? 0) - (was.oddsAtPlanting ?? 0)),
  );
  expect(moved).toEqual([...moved].sort((a, b) => b - a));
  const wet = await refresh('2026-09-30', 150);
  const fallen = wet.changes.filter(({ why }) => why === 'odds moved');
  expect(fallen.length).toBeGreaterThan(0);
  for (const { was, is, text } of fallen) {
    expect(is.oddsAtPlanting ?? 1).toBeLessThan((was.oddsAtPlanting ?? 0) - 0.1);
    expect(text).toContain('the odds have fallen');
  }
  expect((await store.lastAnswers()).map(({ fieldId }) => fieldId)).toEqual(['full', 'half']);
});
