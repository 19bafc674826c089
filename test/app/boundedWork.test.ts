import { describe, expect, it } from 'vitest';
import { readFieldList } from '../../src/app/fieldList.ts';
import { readBackup } from '../../src/app/restoreBackup.ts';
import { FIELD_TABLE } from '../../src/app/tables/fieldTable.ts';
import { LABEL_TABLE } from '../../src/app/tables/labelTable.ts';
import { readTable } from '../../src/app/tables/readTable.ts';
import { isoDateOf } from '../../src/calendar.ts';
import { editDistance } from '../../src/catalogue/spelling.ts';
import { readGaugeFile } from '../../src/cli/gaugeFile.ts';
import { DrywakeError } from '../../src/errors.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';
import { dlyLine } from '../fixtures/weather/lines.ts';
import { tempFile } from '../tempFolder.ts';
import { countWork } from '../workCount.ts';

const ID = 'TST00000001';
const times = (n: number, text: (index: number) => string) => Array.from({ length: n }, (_, at) => text(at));
const day = (index: number) => isoDateOf(7305 + index);
const compact = (index: number) => day(index).replaceAll('-', '');
const idOf = (index: number) => `TST${String(index).padStart(8, '0')}`;

const backupOf = (n: number) => ({
  ...{ format: 'drywake-backup', formatVersion: 1, madeAt: '2026-11-25T12:00:00Z', program: '0.1.0' },
  fields: Array.from({ length: n }, (_, at) => ({
    ...{ id: 'home-quarter', version: at + 1, removed: false, changedAt: '2026-11-25T12:00:00Z' },
    document: fieldOf(),
  })),
  ...{ labels: [], lastAnswers: [] },
});

type Reads = (text: string) => unknown;
const record =
  (name: string): Reads =>
  (text) =>
    createFileReader([tempFile(name, text)], { station: 'own', units: 'metric' }).stations();
const oneStation =
  (name: string): Reads =>
  (text) =>
    createFileReader([tempFile(name, text)]).record(ID);
const fields: Reads = (text) => readTable(text, FIELD_TABLE, new Map());
const labels: Reads = (text) => readTable(text, LABEL_TABLE, new Map());
const list: Reads = (text) => readFieldList(text, 'list.csv');
const gauge: Reads = (text) => readGaugeFile(text, 'gauge.csv');

/** What each reader is given, n of something: sound, and what would cost it most. */
const CASES: readonly (readonly [string, Reads, (n: number) => string])[] = [
  [
    'fixed-width months',
    record('a.dly'),
    (n) => times(n, (at) => `${dlyLine(ID, 1700 + (at % 400), 1 + (at % 12), 'PRCP', { 1: at })}\n`).join(''),
  ],
  [
    'fixed-width stations',
    record('a.dly'),
    (n) => times(n, (at) => `${dlyLine(idOf(at), 1988, 1, 'PRCP', { 1: 1 })}\n`).join(''),
  ],
  ['values', record('a.csv'), (n) => times(n, (at) => `${ID},${compact(at)},PRCP,1,,,7,\n`).join('')],
  [
    'values, the latest first',
    record('a.csv'),
    (n) => times(n, (at) => `${ID},${compact(n - at)},PRCP,1,,,7,\n`).join(''),
  ],
  ['stations', record('a.csv'), (n) => times(n, (at) => `${idOf(at)},19880101,PRCP,1,,,7,\n`).join('')],
  [
    'one station among others',
    oneStation('a.csv'),
    (n) => times(n, (at) => `${idOf(at + 1)},19880101,PRCP,1,,,7,\n`).join(''),
  ],
  [
    'a station that moves with each line',
    record('a.csv'),
    (n) =>
      `ID,DATE,ELEMENT,VALUE,M-FLAG,Q-FLAG,LATITUDE,LONGITUDE,ELEVATION,STATE,NAME\n${times(n, (at) => `${ID},${compact(at)},PRCP,1,,,${at % 90},1,1,STATE ${at},\n`).join('')}`,
  ],
  ['gauge days', record('a.csv'), (n) => `date,rain_mm\n${times(n, (at) => `${day(at)},1.5\n`).join('')}`],
  [
    'gauge columns',
    record('a.csv'),
    (n) => `date,rain_mm,${times(n, (at) => `c${at}`).join()}\n2020-01-01,1.5,${','.repeat(n - 1)}\n`,
  ],
  [
    'wide columns',
    record('a.csv'),
    (n) =>
      `STATION,DATE,PRCP,${times(n, (at) => `C${at}`).join()}\n${ID},2020-01-01,1.5,${times(n, () => '1').join()}\n`,
  ],
  ['quoted cells', record('a.csv'), (n) => `date,rain_mm,note\n2020-01-01,1.5,${'"a""b"'.repeat(n)}\n`],
  ['fields', fields, (n) => `id,station\n${times(n, (at) => `f${at},x\n`).join('')}`],
  [
    'rows of one field',
    fields,
    (n) => `id,treatment,applied_on\n${times(n, (at) => `f,t${at},2026-08-14\n`).join('')}`,
  ],
  ['rows of one field that differ', fields, (n) => `id,station\n${times(n, (at) => `f,x${at}\n`).join('')}`],
  ['gauge cells', fields, (n) => `id,gauge_mm\nf,${times(n, (at) => `${day(at)}=1`).join('; ')}\n`],
  ['columns of a table', fields, (n) => `id,${times(n, (at) => `c${at}`).join()}\n${'f\n'.repeat(n)}`],
  [
    'rows of one label entry',
    labels,
    (n) => `id,name,crop,interval\n${times(n, (at) => `e,E,crop ${at},4 months\n`).join('')}`,
  ],
  ['rows of a list', list, (n) => `field,crop\n${times(n, () => 'a,lentil\n').join('')}`],
  ['columns of a list', list, (n) => `${times(n, (at) => `c${at}`).join()}\n${'a\n'.repeat(n)}`],
  ['gauge entries', gauge, (n) => `date,rain_mm\n${times(n, (at) => `${day(at)},1\n`).join('')}`],
  ['versions of a backup', readBackup, (n) => JSON.stringify(backupOf(n / 10))],
];

const SOME = 1000;

it('work that grows with the square is noticed', async () => {
  const work = (n: number) => countWork(async () => editDistance('a'.repeat(n), 'b'.repeat(n)));
  await work(10);
  expect(await work(400)).toBeGreaterThan(14 * (await work(100)));
});

describe('work grows no faster than what is given', () => {
  it.each(CASES)('%s', async (_what, reads, text) => {
    const work = async (n: number) => {
      const given = text(n);
      return countWork(async () => {
        try {
          await reads(given);
        } catch (error) {
          if (!(error instanceof DrywakeError)) throw error;
        }
      });
    };
    await work(10);
    const once = await work(SOME);
    const fourTimes = await work(4 * SOME);
    expect(fourTimes).toBeLessThan(4.2 * once + 10_000);
  });
});
