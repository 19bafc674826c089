import type { UnitSystem } from '../schema/readOptions.ts';

/** Where a gauge file holds what is read, from 0; -1 where it does not. */
export interface GaugeColumns {
  /** One column with the whole date, or three with year, month and day. */
  readonly dateAt: readonly [number] | readonly [number, number, number];
  readonly rainAt: number;
  readonly maxTempAt: number;
  readonly minTempAt: number;
  readonly stationAt: number;
  /** Columns that are not used. */
  readonly unusedAt: readonly number[];
}

/** What a header could be taken for: its columns, or the names among which none can be chosen. */
export type GaugeHeader = { readonly columns: GaugeColumns } | { readonly rivals: readonly string[] };

const RAIN = ['rain', 'rainfall', 'precip', 'precipitation', 'prcp', 'pcp', 'ppt'];
const STATION = ['station', 'site', 'id'];
const TEMPERATURE = ['temp', 'temperature', 't', 'air', 'tmax', 'tmin'];
const HIGHEST = ['max', 'maximum', 'high'];
const LOWEST = ['min', 'minimum', 'low'];
const UNITS: Record<string, 'us' | 'metric'> = {
  ...{ in: 'us', inch: 'us', inches: 'us', f: 'us', degf: 'us', fahrenheit: 'us' },
  ...{ mm: 'metric', millimeters: 'metric', millimetres: 'metric' },
  ...{ c: 'metric', degc: 'metric', celsius: 'metric' },
};

/** Words of a column's name: "Rain (in)", "rain_in" and "rainIn" are the same two. */
const wordsOf = (name: string): string[] =>
  name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replaceAll('°', ' ')
    .split(/[^a-z0-9]+/)
    .filter(Boolean);

/** Unit system that a column's name gives away; undefined where it names no unit, or more than one. */
export function unitInName(name: string): UnitSystem | undefined {
  const found = new Set(wordsOf(name).flatMap((word) => (Object.hasOwn(UNITS, word) ? [UNITS[word]] : [])));
  return found.size === 1 ? [...found][0] : undefined;
}

/** Guesses which column is which; null where the line is no header with a date and rain. */
export function gaugeColumns(header: readonly string[]): GaugeHeader | null {
  const words = header.map(wordsOf);
  const all = (fits: (words: readonly string[]) => boolean) =>
    words.flatMap((one, at) => (fits(one) ? [at] : []));
  const has = (one: readonly string[], list: readonly string[]) => one.some((word) => list.includes(word));
  const is = (name: string) => words.findIndex((one) => one.length === 1 && one[0] === name);
  const parts = [is('year'), is('month'), is('day')] as const;
  const dates = all((one) => one.includes('date'));
  const rain = all((one) => has(one, RAIN));
  const warmest = all((one) => isTemperature(one, 'tmax', HIGHEST) && !has(one, RAIN));
  const coldest = all((one) => isTemperature(one, 'tmin', LOWEST) && !has(one, RAIN));
  const whole = dates.length > 0 ? dates : is('day') >= 0 ? [is('day')] : [];
  const inParts = dates.length === 0 && parts.every((at) => at >= 0);
  if ((whole.length === 0 && !inParts) || rain.length === 0) return null;
  for (const rivals of [inParts ? [] : whole, rain, warmest, coldest]) {
    if (rivals.length > 1) return { rivals: rivals.map((at) => header[at]) };
  }
  const dateAt: GaugeColumns['dateAt'] = inParts ? parts : [whole[0]];
  const [maxTempAt, minTempAt] = [warmest[0] ?? -1, coldest[0] ?? -1];
  const stationAt = words.findIndex((one) => has(one, STATION) && !one.includes('name'));
  const used = new Set([...dateAt, rain[0], maxTempAt, minTempAt, stationAt]);
  const unusedAt = [...header.keys()].filter((at) => header[at] !== '' && !used.has(at));
  return { columns: { dateAt, rainAt: rain[0], maxTempAt, minTempAt, stationAt, unusedAt } };
}

/** "tmax_c", "max temp", "high": the extreme's word, with nothing beside it but a temperature's and a unit's. */
function isTemperature(words: readonly string[], short: string, extreme: readonly string[]): boolean {
  if (words.includes(short)) return true;
  return (
    words.some((word) => extreme.includes(word)) &&
    words.every((word) => extreme.includes(word) || TEMPERATURE.includes(word) || Object.hasOwn(UNITS, word))
  );
}
