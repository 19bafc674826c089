import { readdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { gzipSync } from 'node:zlib';
import { describe, expect, it, onTestFinished } from 'vitest';
import { isoDateOf } from '../../src/calendar.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { openWeatherStore, type WeatherStore } from '../../src/store/weatherStore.ts';
import fc from '../fastCheck.ts';
import { refusalOf } from '../refusal.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';

async function newStore(...files: string[]): Promise<WeatherStore> {
  const store = await openWeatherStore(tempFolder(), { mode: 'write', files });
  onTestFinished(() => store.close());
  return store;
}

async function readByReaders(path: string): Promise<StationRecord[]> {
  const { files } = await findRecordFiles([path]);
  return files[0].records();
}

const bySpelling = (a: StationRecord, b: StationRecord) => (a.station.id < b.station.id ? -1 : 1);

/** The records that the database made of a file. */
async function readByStore(store: WeatherStore, path: string): Promise<StationRecord[]> {
  expect((await store.importFile(path)).outcome).toBe('imported');
  const records: StationRecord[] = [];
  for (const { id } of await store.stations()) records.push(await store.record(id));
  return records;
}

const line = (
  id: string,
  day: string,
  element: string,
  value: string | number,
  m = '',
  q = '',
  hour = '0800',
) => `${id},${day},${element},${value},${m},${q},7,${hour}`;

describeWithRecords('real files imported by the database alone', (shared) => {
  const derived = readdirSync(join(shared, 'derived')).filter((name) => name.endsWith('.csv.gz'));
  const paths = [
    ...derived.map((name) => join(shared, 'derived', name)),
    join(shared, 'bench', '1995-dev.csv.gz'),
    join(shared, 'bench', 'ghcn-dev-long.csv.gz'),
    join(shared, 'ghcnd', '1800.csv'),
  ];
  it.each(paths.map((path) => [basename(path), path]))(
    '%s: the same records as the readers make',
    async (_, path) => {
      const expected = (await readByReaders(path)).sort(bySpelling);
      expect(expected.length).toBeGreaterThan(0);
      const stored = await readByStore(await newStore(path), path);
      expect(stored.map(({ station }) => station.id)).toEqual(expected.map(({ station }) => station.id));
      const different = stored.filter((record, index) => !isDeepStrictEqual(record, expected[index]));
      expect(different.map(({ station, reading }) => [station.id, reading])).toEqual([]);
    },
  );

  it('a file that the readers own is left to them, unchanged', async () => {
    const path = join(shared, 'ghcnd', '1763-1764.csv');
    const store = await newStore(path);
    expect(await store.importFile(path)).toEqual({ outcome: 'left-to-readers', line: 0 });
    expect(await store.stations()).toEqual([]);
  });
});

/** Hours of reading, and what is none. */
const HOURS =
  '0700,1700,2400,0000,0059,0060,2401,9999,10e1,0x12,1_00, 700,+700,-700,700,00700,7:00,1.e2'.split(',');

const ids = fc.constantFrom('TST00000001', 'TST00000002', 'US10chas006', 'T-_4');
const lines = fc
  .record({
    id: ids,
    day: fc.integer({ min: 10_950, max: 10_965 }),
    element: fc.constantFrom('PRCP', 'TMAX', 'TMIN', 'MDPR', 'DAPR', 'SNOW', 'WT01'),
    value: fc.oneof(
      fc.integer({ min: -800, max: 800 }),
      fc.constantFrom(
        '',
        -9999,
        0,
        1,
        19_999,
        20_000,
        20_001,
        700,
        701,
        -700,
        -701,
        999_999_999,
        -999_999_999,
      ),
    ),
    m: fc.constantFrom('', '', 'P', 'T'),
    q: fc.constantFrom('', '', '', 'I'),
    hour: fc.constantFrom('', '', ...HOURS),
  })
  .map(({ id, day, element, value, m, q, hour }) =>
    line(id, isoDateOf(day).replaceAll('-', ''), element, value, m, q, hour),
  );
const writing = fc.record({
  lines: fc.array(lines, { minLength: 1, maxLength: 120 }),
  header: fc.constantFrom('', 'ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME'),
  newLine: fc.constantFrom('\n', '\r\n'),
  lastLine: fc.boolean(),
  packed: fc.boolean(),
});

describe('files of any content', () => {
  it('become the same records by the database and by the readers', async () => {
    const folder = tempFolder();
    const store = await openWeatherStore(folder, { mode: 'write' });
    let run = 0;
    let stations = 0;
    await fc.assert(
      fc.asyncProperty(writing, async ({ lines, header, newLine, lastLine, packed }) => {
        run++;
        const ownIds = lines.map((text) => text.replace(',', `_${run},`));
        const path = join(folder, `${run}.csv${packed ? '.gz' : ''}`);
        const text = [...(header ? [header] : []), ...ownIds].join(newLine) + (lastLine ? newLine : '');
        writeFileSync(path, packed ? gzipSync(text) : text);
        const expected = await readByReaders(path);
        const result = await store.importFile(path).catch((error) => error.code);
        if (!text.includes('\n')) expect(result).toEqual({ outcome: 'left-to-readers', line: 0 });
        else if (expected.length === 0) expect(result).toBe('STATION_EMPTY');
        else expect(result.outcome).toBe('imported');
        if (result.outcome !== 'imported') return;
        for (const record of expected) expect(await store.record(record.station.id)).toEqual(record);
        stations += expected.length;
        expect((await store.stations()).length).toBe(stations);
      }),
      { numRuns: 100 },
    );
    expect(stations).toBeGreaterThan(100);
    await store.close();
  });
});

describe('a second file beside what is stored', () => {
  const first = [
    line('TST00000001', '20000101', 'PRCP', 10),
    line('TST00000001', '20000102', 'TMAX', 50),
    line('TST00000001', '20000102', 'TMIN', 5),
    line('TST00000002', '20000102', 'PRCP', 7),
  ];
  const second = [
    line('TST00000001', '20000101', 'PRCP', 12),
    line('TST00000001', '20000102', 'PRCP', 3),
    line('TST00000001', '20000102', 'TMAX', '', '', ''),
    line('TST00000001', '19991231', 'PRCP', 1),
    line('TST00000003', '20000101', 'PRCP', 4),
    line('TST00000002', '20000102', 'PRCP', 9, '', 'I'),
    line('TST00000002', '20000103', 'PRCP', 2),
  ];

  it('changes it just as records read and merged one by one do', async () => {
    const a = tempFile('a.csv', `${first.join('\n')}\n`);
    const b = tempFile('b.csv', `${second.join('\n')}\n`);
    const bulk = await newStore(a, b);
    const onebyone = await newStore();
    for (const path of [a, b, a]) {
      const result = await bulk.importFile(path);
      const records = (await readByReaders(path)).sort(bySpelling);
      const counts = await onebyone.importRecords(records);
      expect(result.outcome === 'imported' && result.stations).toMatchObject(
        records.map(({ station }, index) => ({ stationId: station.id, ...counts[index] })),
      );
      expect(await bulk.stations()).toEqual(await onebyone.stations());
      for (const { id } of await bulk.stations())
        expect(await bulk.record(id)).toEqual(await onebyone.record(id));
    }
    // The first file again took the place of one value of the second.
    expect([...(await bulk.record('TST00000001')).rainTenthsMm]).toEqual([1, 10, 3]);
  });

  it('of the same content changes nothing', async () => {
    const a = tempFile('a.csv', `${first.join('\n')}\n`);
    const store = await newStore(a);
    await store.importFile(a);
    const before = await store.stations();
    expect(await store.importFile(a)).toMatchObject({
      stations: [
        { inserted: 0, replaced: 0 },
        { inserted: 0, replaced: 0 },
      ],
    });
    expect(await store.stations()).toEqual(before);
  });

  it('refuses a station that is stored as an invented one, and keeps nothing of the file', async () => {
    const a = tempFile('a.csv', `${first.join('\n')}\n`);
    const store = await newStore(a);
    const [record] = await readByReaders(a);
    await store.importRecord({ ...record, station: { ...record.station, invented: true } });
    const { code, message } = await refusalOf(store.importFile(a));
    expect(code).toBe('STATION_INVENTED');
    expect(message).toBe(
      'Station TST00000001 is stored as an invented record; a real one cannot be mixed into it.',
    );
    expect((await store.stations()).map(({ id }) => id)).toEqual(['TST00000001']);
  });
});

describe('damaged files', () => {
  const good = [line('TST00000001', '20000101', 'PRCP', 10), line('TST00000001', '20000102', 'PRCP', 11)];
  it.each([
    ['a value that is no whole number', line('TST00000001', '20000103', 'PRCP', '1.5')],
    ['a value with an exponent', line('TST00000001', '20000103', 'PRCP', '1e2')],
    ['a value of ten digits', line('TST00000001', '20000103', 'TMAX', 1_000_000_000)],
    ['a date that does not exist', line('TST00000001', '20000230', 'PRCP', 1)],
    ['a date with letters', line('TST00000001', '2000010X', 'PRCP', 1)],
    ['a line cut short', 'TST00000001,20000103,PR'],
    ['too many fields', `${line('TST00000001', '20000103', 'PRCP', 1)},x`],
    ['a quoted field', '"TST00000001",20000103,PRCP,1,,,7,'],
    ['a quoted element', 'TST00000001,20000103,"PRC,1,,,7,'],
    ['a flag of two letters', line('TST00000001', '20000103', 'PRCP', 1, '', 'IX')],
    ['an element of three letters', line('TST00000001', '20000103', 'PRC', 1)],
    ['no id', line('', '20000103', 'PRCP', 1)],
    ['an id with a blank', line('TST 0000001', '20000103', 'PRCP', 1)],
    [
      'a lone carriage return',
      `${line('TST00000001', '20000103', 'PRCP', 1)}\rTST00000001,20000104,PRCP,1,,,7,`,
    ],
  ])('%s is left to the readers, which name the place', async (_, bad) => {
    const path = tempFile('bad.csv', `${[...good, bad, ...good].join('\n')}\n`);
    const store = await newStore(path);
    expect((await store.importFile(path)).outcome).toBe('left-to-readers');
    expect(await store.stations()).toEqual([]);
    const { code, details } = await refusalOf(readByReaders(path));
    expect(code).toBe('FILE_DAMAGED');
    expect(details).toMatchObject({ line: 3, column: expect.any(Number) });
  });

  it('a packed file cut short is left to the readers', async () => {
    const many = Array.from({ length: 5000 }, (_, i) =>
      line(`TST0${1_000_000 + i}`, '20000101', 'PRCP', (i * 7) % 311),
    );
    const packed = gzipSync(`${many.join('\n')}\n`);
    for (const part of [packed.length - 4, packed.length - 9, Math.floor(packed.length * 0.6)]) {
      const path = tempFile('cut.csv.gz', packed.subarray(0, part));
      const store = await newStore(path);
      const outcome = await store.importFile(path).then((result) => result.outcome);
      expect([part, outcome]).toEqual([part, 'left-to-readers']);
      expect((await refusalOf(readByReaders(path))).code).toBe('FILE_DAMAGED');
    }
  });
});

it('a file with blanks for flags is left to the readers, which take it', async () => {
  const path = tempFile('blank.csv', `${line('TST00000001', '20000101', 'PRCP', 5, ' ', ' ')}\n`);
  expect((await (await newStore(path)).importFile(path)).outcome).toBe('left-to-readers');
  expect((await readByReaders(path))[0].reading.droppedByFlag).toBe(0);
});

it('a packed file of two parts is read to its end', async () => {
  const parts = ['20000101', '20000102'].map((day) => gzipSync(`${line('TST00000001', day, 'PRCP', 5)}\n`));
  const path = tempFile('two.csv.gz', Buffer.concat(parts));
  expect(await readByStore(await newStore(path), path)).toEqual(await readByReaders(path));
});
