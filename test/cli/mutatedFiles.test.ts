import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { assertAskable } from '../../src/app/askedRows.ts';
import { batch } from '../../src/app/batch.ts';
import { readFieldList } from '../../src/app/fieldList.ts';
import { headerOf } from '../../src/app/tables/column.ts';
import { FIELD_TABLE } from '../../src/app/tables/fieldTable.ts';
import { LABEL_TABLE } from '../../src/app/tables/labelTable.ts';
import { readTable } from '../../src/app/tables/readTable.ts';
import { readGaugeFile } from '../../src/cli/gaugeFile.ts';
import { soilsByStation } from '../../src/cli/soilsByStation.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { DrywakeError } from '../../src/errors.ts';
import { batchSchema } from '../../src/schema/batch.ts';
import { BATCH_COLUMNS } from '../../src/schema/batchColumns.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import { fieldRecordSchema } from '../../src/schema/fieldRecord.ts';
import { labelEntrySchema } from '../../src/schema/labelEntry.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { catalogue } from '../catalogue/loaded.ts';
import fc from '../fastCheck.ts';
import { SOUND } from '../fixtures/hostile/damagedFiles.ts';
import { HOSTILE } from '../http/arbitraryOf.ts';
import { tempFolder } from '../tempFolder.ts';

const RUNS = Number(process.env.FUZZ_RUNS ?? 40);
vi.setConfig({ testTimeout: RUNS * 6000 });

/** Pieces that break readers. */
const piece = fc.oneof(
  fc.constantFrom(
    '\0',
    '\ufeff',
    '"',
    '""',
    ',',
    ';',
    '\t',
    '\r',
    '\n',
    '\r\n',
    '-',
    '+',
    '=',
    '{',
    '[',
    '/',
  ),
  fc.constantFrom(
    '1e999',
    '-0',
    '-7',
    'NaN',
    '0000-00-00',
    '9999-12-31',
    '2023-02-29',
    '-9999',
    '99999',
    '٣',
  ),
  fc.constantFrom(...HOSTILE.filter((one) => typeof one === 'string')),
  fc.string({ unit: 'binary', maxLength: 6 }),
);

/** One change of a text: at a place, so much taken out, a piece put in, so many times over. */
const edit = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  out: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 40 })),
  put: fc.option(piece, { nil: '' }),
  times: fc.oneof({ weight: 8, arbitrary: fc.constant(1) }, fc.integer({ min: 2, max: 300 })),
});
const edits = fc.array(edit, { minLength: 1, maxLength: 5 });

const mutated = (text: string, changes: readonly (typeof edit extends fc.Arbitrary<infer T> ? T : never)[]) =>
  changes.reduce((now, { at, out, put, times }) => {
    const from = Math.floor(at * now.length);
    return now.slice(0, from) + put.repeat(times) + now.slice(from + out);
  }, text);

/** What comes back is what the reader promises; anything but a refusal in words is a fault. */
async function takenOrRefused(work: () => unknown): Promise<void> {
  try {
    await work();
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    expect(error.message.length).toBeGreaterThan(10);
  }
}

const batchDeps = { version: '1', catalogue, weather: createDemoReader() };
const answered = async (text: string) => {
  const list = readFieldList(text, 'list.csv');
  assertAskable(list, { residual: 'flumioxazin' });
  batchSchema.parse(await batch(list, { residual: 'flumioxazin' }, batchDeps));
};
const fieldsIn = (text: string) => {
  for (const { record } of readTable(text, FIELD_TABLE, new Map()).records) fieldRecordSchema.parse(record);
};
const labelsIn = (text: string) => {
  for (const { record } of readTable(text, LABEL_TABLE, new Map()).records) labelEntrySchema.parse(record);
};

const READERS: Readonly<Record<string, (text: string) => unknown>> = {
  'gauge.csv': (text) => readGaugeFile(text, 'gauge.csv'),
  'fields.csv': fieldsIn,
  'labels.csv': labelsIn,
  'list.csv': answered,
  'soils.csv': (text) => soilsByStation(text, 'soils.csv'),
};
const TEXTS: Readonly<Record<string, string>> = {
  ...SOUND,
  'soils.csv': 'station,soil_class\nX1,loam\nX2,clay loam\n',
};

describe('a sound file with any changes', () => {
  it.each(Object.keys(READERS))('%s is taken or refused in words', async (name) => {
    await fc.assert(
      fc.asyncProperty(edits, (changes) =>
        takenOrRefused(() => READERS[name](mutated(TEXTS[name], changes))),
      ),
      { numRuns: RUNS },
    );
  });

  it.each(['fixed-width.dly', 'by-station.csv', 'joined.csv', 'daily.csv', 'order.csv', 'gauge.csv'])(
    '%s as a record is read, every day of it, or refused in words',
    async (name) => {
      const path = join(tempFolder(), name);
      await fc.assert(
        fc.asyncProperty(edits, (changes) => {
          writeFileSync(path, mutated(TEXTS[name], changes));
          return takenOrRefused(async () => {
            const reader = createFileReader([path], { station: 'own', units: 'us', dates: 'month-first' });
            for (const { id, firstDate, lastDate } of await reader.stations()) {
              expect(firstDate <= lastDate).toBe(true);
              const { rainTenthsMm } = await reader.record(id);
              expect(rainTenthsMm.every((rain) => rain === ABSENT || rain >= 0)).toBe(true);
            }
          });
        }),
        { numRuns: RUNS },
      );
    },
  );
});

describe('a cell of any column', () => {
  const cell = fc.oneof(
    piece,
    fc.string({ maxLength: 30 }),
    fc.double().map(String),
    fc.json({ maxDepth: 2 }),
  );
  const line = (cells: readonly string[]) =>
    `${cells.map((one) => `"${one.replaceAll('"', '""')}"`).join(',')}\n`;
  const columnsOf = ({ head, lists }: Pick<typeof FIELD_TABLE, 'head' | 'lists'>) =>
    [...head, ...lists.flatMap(({ columns }) => columns)].flatMap((column) => [
      ...new Set([headerOf(column, 'metric'), headerOf(column, 'us')]),
    ]);

  it.each([
    ['fields', columnsOf(FIELD_TABLE), 'id,field', 'home,Home', fieldsIn],
    ['labels', columnsOf(LABEL_TABLE as never), 'id,name', 'shed,Shed', labelsIn],
    [
      'a list',
      BATCH_COLUMNS.map(({ name }) => name),
      'station,crop,applied_on,plant_on',
      'demo-invented,lentil,2026-08-14,2027-05-10',
      answered,
    ],
  ] as const)('of %s is taken or refused in words', async (_, columns, head, row, read) => {
    const bare = columns.filter((name) => !head.split(',').includes(name));
    await fc.assert(
      fc.asyncProperty(
        fc.subarray(bare, { minLength: 1, maxLength: 3 }),
        fc.array(cell, { minLength: 3, maxLength: 3 }),
        (names, cells) =>
          takenOrRefused(() =>
            read(`${head},${names.join(',')}\n${row},${line(cells.slice(0, names.length))}`),
          ),
      ),
      { numRuns: RUNS * 2 },
    );
  });
});
