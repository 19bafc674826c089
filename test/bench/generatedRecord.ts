import { dayNumberOf } from '../../src/calendar.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import type { StationRecord } from '../../src/schema/weather.ts';

/** A small seeded generator; only its repeatability matters here. */
function generator(seed: number): () => number {
  let state = Math.imul(seed + 1, 0x9e3779b1) >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A made-up station's record that ends with 2025: dry to wet, cold to warm by its number, a few days missing. */
export function generatedRecord(number: number, years: number): StationRecord {
  const firstDay = dayNumberOf(2026 - years, 1, 1);
  const days = dayNumberOf(2026, 1, 1) - firstDay;
  const next = generator(number);
  const wetShare = 0.12 + 0.25 * next();
  const wetDayMm = 3 + 5 * next();
  const meanTempC = 4 + 11 * next();
  const rain = new Int32Array(days);
  const maxTemp = new Int32Array(days);
  const minTemp = new Int32Array(days);
  for (let day = 0; day < days; day++) {
    const season = meanTempC - 14 * Math.cos((2 * Math.PI * (day % 365.25)) / 365.25) + 8 * (next() - 0.5);
    const spread = 3 + 12 * next();
    maxTemp[day] = Math.round(10 * (season + spread / 2));
    minTemp[day] = Math.round(10 * (season - spread / 2));
    const wet = next() < wetShare;
    rain[day] = wet ? Math.round(-10 * wetDayMm * Math.log(1 - next())) : 0;
    if (next() < 0.01) rain[day] = ABSENT;
  }
  const none = new Int32Array(days).fill(ABSENT);
  const id = `GEN${String(number).padStart(8, '0')}`;
  return {
    station: {
      id,
      name: `Generated ${number}`,
      latitudeDeg: 32 + (number % 160) / 10,
      longitudeDeg: -120 + ((number * 7) % 500) / 10,
      elevationM: 300,
      invented: true,
    },
    firstDay,
    rainTenthsMm: rain,
    maxTempTenthsC: maxTemp,
    minTempTenthsC: minTemp,
    multiDayRainTenthsMm: none,
    multiDayCount: none.slice(),
    reading: {
      valuesRead: 3 * days,
      droppedByFlag: 0,
      implausible: 0,
      presumedZero: 0,
      duplicated: 0,
      ignoredElements: 0,
      notes: [],
    },
    source: 'generated',
  };
}
