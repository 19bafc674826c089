import { execFile } from 'node:child_process';
import { createWriteStream, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';
import { createGzip } from 'node:zlib';
import { beforeAll, expect, it } from 'vitest';
import { bundled } from '../bundled.ts';
import { tempFolder, tempFolderOfFile } from '../tempFolder.ts';

const MOST_MB = 512;
const MILLION = 1e6;

const folder = tempFolderOfFile();
const fileOf = (name: string) => join(folder, name);
const run = promisify(execFile);
let program = '';

/** A small packed file that unpacks to something large. */
async function bomb(name: string, piece: string, megabytes: number): Promise<void> {
  const bytes = Buffer.from(piece.repeat(Math.ceil(MILLION / piece.length)));
  const pieces = Readable.from(Array.from({ length: megabytes }, () => bytes));
  await pipeline(pieces, createGzip({ level: 1 }), createWriteStream(fileOf(name)));
}

beforeAll(async () => {
  program = await bundled('test/cli/measuredDrywake.ts');
  await bomb('zeros.dly.gz', '\0', 200);
  await bomb('values.csv.gz', 'TST00000001,19880101,PRCP,5,,,7,\n', 550);
  const far = (id: number, date: string) => `T${id},${date},PRCP,5,, ,7,\n`;
  writeFileSync(
    fileOf('far-apart.csv'),
    Array.from({ length: 80_000 }, (_, id) => far(id, '16000101') + far(id, '21991231')).join(''),
  );
  writeFileSync(fileOf('commas.csv'), ','.repeat(60 * MILLION));
  writeFileSync(fileOf('rows.csv'), `field,crop\n${'a,b\n'.repeat(12 * MILLION)}`);
  writeFileSync(fileOf('brackets.json'), '['.repeat(60 * MILLION));
});

const TREATMENT = ['--residual', 'flumioxazin', '--crop', 'lentil', '--applied', '2026-08-14'];

it.each([
  ['zeros.dly.gz', 'unpacked', ['weather', 'import']],
  ['values.csv.gz', 'far more than a record', ['weather', 'import']],
  [
    'values.csv.gz',
    'unpacked',
    ['odds', ...TREATMENT, '--plant', '2027-05-10', '--station', 'TST00000001', '--weather'],
  ],
  ['far-apart.csv', 'more stations and days', ['weather', 'import']],
  ['commas.csv', 'cells', ['batch']],
  ['rows.csv', 'cells', ['fields', 'import']],
  ['brackets.json', 'too many values', ['odds', '--question']],
  ['brackets.json', 'too many values', ['fields', 'restore', '--replace']],
])('%s is refused (%s) by %o in little memory', async (name, words, argv) => {
  const { stdout } = await run(process.execPath, [program, tempFolder(), ...argv, fileOf(name)]);
  const { code, err, peakMb } = JSON.parse(stdout);
  expect([code, err]).toEqual([2, expect.stringContaining(words)]);
  expect(peakMb).toBeLessThan(MOST_MB);
});
