import { existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it, onTestFinished } from 'vitest';
import { csvOf as flatCsv } from '../../src/app/flatTable.ts';
import { csvOf as tableCsv } from '../../src/app/tables/cells.ts';
import { startServer } from '../../src/http/serve.ts';
import { createReceivedFiles } from '../../src/source/receivedFiles.ts';
import { keepFile } from '../../src/store/keepFile.ts';
import { clearSpill } from '../../src/store/lockDown.ts';
import { tellServedBy } from '../../src/store/servedBy.ts';
import { csvOf as pageCsv } from '../../web/src/charts/csv.ts';
import fc from '../fastCheck.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { demoDeps } from './demoDeps.ts';
import { fieldsApp } from './fieldsApp.ts';

/** A server of a page in a folder, beside which something stands that is nobody's business; asked in raw bytes. */
async function servedPage() {
  const outer = tempFolder();
  const pageFolder = join(outer, 'web');
  mkdirSync(join(pageFolder, 'assets'), { recursive: true });
  writeFileSync(join(pageFolder, 'index.html'), '<p>the page</p>');
  writeFileSync(join(outer, 'secret.txt'), 'a secret');
  const server = await startServer({ ...demoDeps, pageFolder }, { port: 0 });
  onTestFinished(() => server.close());
  return (head: string) =>
    new Promise<string>((resolve, reject) => {
      const socket = connect(server.port, '127.0.0.1', () =>
        socket.write(`${head}\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n`),
      );
      let got = '';
      socket.on('data', (piece) => {
        got += piece.toString('latin1');
      });
      socket.on('close', () => resolve(got));
      socket.on('error', reject);
    });
}

describe('ways out', () => {
  it('no address leads out of the folder of the page', async () => {
    const ask = await servedPage();
    expect(await ask('GET /index.html HTTP/1.1')).toContain('the page');
    for (const path of [
      ...['/../secret.txt', '/assets/../../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt'],
      ...[
        '/%2e%2e%2fsecret.txt',
        '/..%5csecret.txt',
        '/..%252fsecret.txt',
        '//../secret.txt',
        '/./../secret.txt',
      ],
      ...['/assets/%00/../../secret.txt', '/\\..\\secret.txt', '/%c0%ae%c0%ae/secret.txt'],
    ]) {
      const answer = await ask(`GET ${path} HTTP/1.1`);
      expect(answer, path).not.toContain('a secret');
      expect(answer, path).not.toMatch(/^HTTP\/1.1 5/);
    }
  });

  it('no link in the data folder makes the program write elsewhere', async () => {
    const [folder, outside] = [tempFolder(), tempFolder()];
    const target = join(outside, 'target');
    writeFileSync(target, 'untouched');
    symlinkSync(target, join(folder, 'server.json'));
    tellServedBy(folder, { address: 'http://127.0.0.1:1/', process: 1, token: null });
    symlinkSync(target, join(folder, 'kept.json'));
    expect(keepFile(folder, 'kept.json', 'new')).toBe('kept-2.json');
    symlinkSync(outside, join(folder, 'weather.spill'));
    clearSpill(folder);
    symlinkSync(outside, join(folder, 'received'));
    const body = new Blob(['x']).stream() as ReadableStream<Uint8Array>;
    const limits = { mostBytes: 10, signal: new AbortController().signal };
    const { code } = await refusalOf(
      createReceivedFiles(join(folder, 'received')).receive('a.csv', body, limits),
    );
    expect(code).toBe('FOLDER_ELSEWHERE');
    expect(readFileSync(target, 'utf8')).toBe('untouched');
    expect(existsSync(join(folder, 'weather.spill'))).toBe(false);
  });
});

it('no part of a request makes a header of an answer', async () => {
  const ask = await servedPage();
  const evil = '%0d%0aX-Evil:%20yes';
  for (const path of [
    `/api/fields.csv?units=metric${evil}`,
    `/api/catalogue/x${evil}`,
    `/api/fields/x${evil}`,
    `/api/weather/import?name=a${evil}`,
    `/${evil}`,
    `/?token=${evil}`,
  ]) {
    const [head] = (await ask(`GET ${path} HTTP/1.1`)).split('\r\n\r\n');
    expect(head, path).toMatch(/^HTTP\/1.1 \d/);
    expect(head, path).not.toMatch(/^x-evil/im);
  }
});

const FORMULA = /^[=+\-@\t\r＝＋－＠]/;
const risky = fc
  .tuple(fc.constantFrom(...'=+-@\t\r＝＋－＠'), fc.string({ maxLength: 12 }))
  .map(([first, rest]) => first + rest)
  .filter((text) => !/^[+-]?\d+(\.\d+)?(e[+-]?\d+)?$/i.test(text));
const rowsOf = (csv: string): string[][] => parse(csv, { relax_column_count: true, bom: true });

it.each([
  ['tables', (text: string) => tableCsv([['head'], [text]])],
  [
    'answers',
    (text: string) => flatCsv([{ name: 'head', type: 'text', cell: (row: string) => row }], [text]),
  ],
  ['the page', (text: string) => pageCsv([{ head: 'head', cell: (row: string) => row }], [text])],
])('no cell of the CSV of %s is run by a spreadsheet', (_what, csvOf) => {
  fc.assert(
    fc.property(risky, (text) => {
      for (const cell of rowsOf(csvOf(text)).flat()) expect(cell).not.toMatch(FORMULA);
    }),
  );
});

it('no record, table or question changes what all objects have', async () => {
  const { ask } = await fieldsApp();
  const bodies = [
    '{"__proto__":{"polluted":true},"id":"x","name":"x"}',
    '{"constructor":{"prototype":{"polluted":true}}}',
    '{"assume":{"__proto__":{"polluted":true}}}',
  ].map((text) => JSON.parse(text));
  for (const body of bodies) {
    for (const [method, path] of [
      ['PUT', '/api/fields/x'],
      ['POST', '/api/odds'],
      ['POST', '/api/region'],
      ['POST', '/api/restore'],
    ]) {
      expect((await ask(method, path, body, { 'if-none-match': '*' })).status).toBeLessThan(500);
    }
  }
  expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
});
