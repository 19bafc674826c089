import { describe, expect, it } from 'vitest';
import { civilDateOf, isoDateOf } from '../../src/calendar.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import type { ReadOptions } from '../../src/schema/readOptions.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import fc from '../fastCheck.ts';
import { dlyLine } from '../fixtures/weather/lines.ts';
import { tempFile } from '../tempFolder.ts';

/** A day's values as a US file prints them: hundredths of an inch, °F; null where missing. */
interface Day {
  readonly rain: number | null;
  readonly max: number | null;
  readonly min: number | null;
  readonly total: number | null;
}
interface Sample {
  readonly firstDay: number;
  readonly days: readonly Day[];
}
/** How the samples' numbers are printed, and the tenths they stand for. */
interface Print {
  readonly units: NonNullable<ReadOptions['units']>;
  rain(n: number): string;
  temperature(n: number): string;
  rainTenths(n: number): number;
  temperatureTenths(n: number): number;
}

const ID = 'TST00000001';
const OTHER = 'TST00000002';

const fixed = (tenths: number) => (tenths / 10).toFixed(1);
const US: Print = {
  units: 'us',
  rain: (n) => (n / 100).toFixed(2),
  temperature: String,
  // in whole numbers throughout: 0.01 in = 2.54 tenths of mm, half a tenth goes up
  rainTenths: (n) => Math.floor((254 * n + 50) / 100),
  temperatureTenths: (n) => Math.floor((2 * 50 * (n - 32) + 9) / 18),
};
const plain = { rainTenths: (n: number) => n, temperatureTenths: (n: number) => n };
const METRIC: Print = { units: 'metric', rain: fixed, temperature: fixed, ...plain };
const TENTHS: Print = { units: 'tenths', rain: String, temperature: String, ...plain };

/** The last number is always there, so that the record ends where the sample does. */
const sample = fc
  .record({
    firstDay: fc.integer({ min: -50_000, max: 60_000 }),
    days: fc.array(
      fc.record<Day>({
        rain: fc.option(fc.integer({ min: 0, max: 999 })),
        max: fc.option(fc.integer({ min: -60, max: 120 })),
        min: fc.option(fc.integer({ min: -60, max: 120 })),
        total: fc.option(fc.integer({ min: 1, max: 999 }), { freq: 2 }),
      }),
      { maxLength: 40 },
    ),
  })
  .map(({ firstDay, days }): Sample => {
    const ends = { rain: 13, max: 57, min: null, total: null };
    return { firstDay, days: [ends, ...days, ends] };
  });

function expected({ firstDay, days }: Sample, print: Print, withTotals: boolean) {
  const column = (of: (day: Day) => number | null, tenths: (n: number) => number) =>
    days.map((day) => {
      const value = of(day);
      return value === null ? ABSENT : tenths(value);
    });
  const absent = days.map(() => ABSENT);
  return {
    firstDay,
    rain: column((day) => day.rain, print.rainTenths),
    max: column((day) => day.max, print.temperatureTenths),
    min: column((day) => day.min, print.temperatureTenths),
    total: withTotals ? column((day) => day.total, print.rainTenths) : absent,
    count: withTotals ? days.map(({ total }) => (total === null ? ABSENT : 2)) : absent,
  };
}

async function readBack(text: string, options: ReadOptions, name = 'written.csv') {
  const record = await createFileReader([tempFile(name, text)], options).record(ID);
  return {
    firstDay: record.firstDay,
    rain: [...record.rainTenthsMm],
    max: [...record.maxTempTenthsC],
    min: [...record.minTempTenthsC],
    total: [...record.multiDayRainTenthsMm],
    count: [...record.multiDayCount],
  };
}

/** Every value as the narrow layouts take it, in tenths. */
const elementsOf = ({ rain, max, min, total }: Day): [string, number | null][] => [
  ['PRCP', rain],
  ['TMAX', max],
  ['TMIN', min],
  ['MDPR', total],
  ['DAPR', total === null ? null : 2],
];

const compact = (iso: string) => iso.replaceAll('-', '');

function asDly({ firstDay, days }: Sample): string {
  const lines = new Map<
    string,
    { year: number; month: number; element: string; values: Record<number, number> }
  >();
  for (const [index, day] of days.entries()) {
    const { year, month, day: dayOfMonth } = civilDateOf(firstDay + index);
    for (const [element, value] of elementsOf(day)) {
      const key = `${year}-${month}-${element}`;
      const line = lines.get(key) ?? { year, month, element, values: {} };
      if (value !== null) line.values[dayOfMonth] = value;
      lines.set(key, line);
    }
  }
  return [...lines.values()]
    .map(({ year, month, element, values }) => dlyLine(ID, year, month, element, values))
    .join('\n');
}

/** By date, with another station's lines between, as a by-year file is. */
const asByYear = ({ firstDay, days }: Sample, header: string, more = '') =>
  [
    ...(header ? [header] : []),
    ...days.flatMap((day, index) =>
      elementsOf(day).flatMap(([element, value]) =>
        value === null
          ? []
          : [OTHER, ID].map(
              (id) => `${id},${compact(isoDateOf(firstDay + index))},${element},${value},,,0,${more}`,
            ),
      ),
    ),
  ].join('\r\n');

/** A table with a line a day; the columns' order, the case of the names and the mark of the missing vary. */
function asWide(
  { firstDay, days }: Sample,
  print: Print,
  {
    attributes,
    lower,
    turned,
    missing,
  }: { attributes: boolean; lower: boolean; turned: boolean; missing: string },
): string {
  const columns: [string, (day: Day, iso: string) => string][] = [
    ['STATION', () => (attributes ? ID : `GHCND:${ID}`)],
    ['NAME', () => 'NOWHERE, XX'],
    ['DATE', (_day, iso) => (attributes ? iso : compact(iso))],
  ];
  const add = (name: string, of: (day: Day) => string | null) => {
    columns.push([name, (day) => of(day) ?? missing]);
    if (attributes) columns.push([`${name}_ATTRIBUTES`, (day) => (of(day) === null ? '' : ',,0')]);
  };
  const printed = (value: number | null, how: (n: number) => string) => (value === null ? null : how(value));
  add('PRCP', ({ rain }) => printed(rain, print.rain));
  add('TMAX', ({ max }) => printed(max, print.temperature));
  add('TMIN', ({ min }) => printed(min, print.temperature));
  add('MDPR', ({ total }) => printed(total, print.rain));
  add('DAPR', ({ total }) => (total === null ? null : '2'));
  if (turned) columns.reverse();
  const line = (cells: readonly string[]) => cells.map((cell) => `"${cell}"`).join(',');
  return [
    line(columns.map(([name]) => (lower ? name.toLowerCase() : name))),
    ...days.map((day, index) => line(columns.map(([, of]) => of(day, isoDateOf(firstDay + index))))),
  ].join('\n');
}

function asGauge(
  { firstDay, days }: Sample,
  print: Print,
  dates: 'iso' | 'day-first' | 'month-first',
): string {
  const date = (dayNumber: number) => {
    if (dates === 'iso') return isoDateOf(dayNumber);
    const { year, month, day } = civilDateOf(dayNumber);
    return dates === 'day-first' ? `${day}/${month}/${year}` : `${month}/${day}/${year}`;
  };
  const printed = (value: number | null, how: (n: number) => string) => (value === null ? '' : how(value));
  return [
    'Date,Rain,High,Low',
    ...days.map(({ rain, max, min }, index) =>
      [
        date(firstDay + index),
        printed(rain, print.rain),
        printed(max, print.temperature),
        printed(min, print.temperature),
      ].join(','),
    ),
  ].join('\n');
}

const runs = { numRuns: 60 };
const prints = fc.constantFrom(US, METRIC, TENTHS);

describe('a record written in a layout and read back has the same columns', () => {
  it('fixed width', () =>
    fc.assert(
      fc.asyncProperty(sample, async (written) => {
        expect(await readBack(asDly(written), {}, 'written.dly')).toEqual(expected(written, TENTHS, true));
      }),
      runs,
    ));

  it('by year, with and without header, alone and joined with station fields', () =>
    fc.assert(
      fc.asyncProperty(sample, fc.constantFrom('without', 'with', 'joined'), async (written, kind) => {
        const header = 'ID,DATE,ELEMENT,DATA VALUE,M-FLAG,Q-FLAG,S-FLAG,OBS-TIME';
        const text =
          kind === 'joined'
            ? asByYear(
                written,
                `${header},LATITUDE,LONGITUDE,ELEVATION,NAME`,
                ',45.5,-110.25,1320,"NOWHERE, XX"',
              )
            : asByYear(written, kind === 'with' ? header : '');
        expect(await readBack(text, {})).toEqual(expected(written, TENTHS, true));
      }),
      runs,
    ));

  it('daily summaries and web orders, in each system of units', () =>
    fc.assert(
      fc.asyncProperty(
        sample,
        prints,
        fc.record({
          attributes: fc.boolean(),
          lower: fc.boolean(),
          turned: fc.boolean(),
          missing: fc.constantFrom('', '-9999'),
        }),
        async (written, print, style) => {
          const text = asWide(written, print, style);
          expect(await readBack(text, { units: print.units })).toEqual(expected(written, print, true));
        },
      ),
      runs,
    ));

  it('gauge, in each system of units and order of dates', () =>
    fc.assert(
      fc.asyncProperty(
        sample,
        prints,
        fc.constantFrom('iso', 'day-first', 'month-first'),
        async (written, print, dates) => {
          const options: ReadOptions = { units: print.units, station: ID };
          const text = asGauge(written, print, dates);
          const declared: ReadOptions = dates === 'iso' ? options : { ...options, dates };
          expect(await readBack(text, declared)).toEqual(expected(written, print, false));
        },
      ),
      runs,
    ));
});
