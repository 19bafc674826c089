import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  docOf,
  exampleModule,
  examples,
  isFunction,
  libraryExports,
  libraryTypes,
  refuses,
} from './examples.ts';
import * as given from './given.ts';

const PROJECT = new URL('../../', import.meta.url);
const FOLDER = fileURLToPath(new URL('test-output/examples/', PROJECT));
const all = examples();

/** A written literal as a value. */
const writtenValue = (text: string): unknown =>
  text === 'undefined'
    ? undefined
    : JSON.parse(text.replaceAll("'", '"').replace(/([{,] *)(\w+):/g, '$1"$2":'));

/** A result as plain data: arrays for typed arrays. */
const plain = (value: unknown): unknown =>
  value === undefined
    ? undefined
    : JSON.parse(
        JSON.stringify(value, (_, one) => (ArrayBuffer.isView(one) ? Array.from(one as Float64Array) : one)),
      );

/** Equal, numbers to half of the last digit that is written. */
function expectAlike(got: unknown, written: unknown, text: string): void {
  if (typeof written === 'number' && typeof got === 'number') {
    const digits = Number.isInteger(written) ? 9 : (String(written).split('.')[1]?.length ?? 0);
    expect(Math.abs(got - written), text).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-12);
  } else if (typeof written === 'object' && written !== null && typeof got === 'object' && got !== null) {
    expect(Object.keys(got), text).toEqual(Object.keys(written));
    for (const [key, one] of Object.entries(written)) expectAlike(got[key as never], one, text);
  } else expect(got, text).toBe(written);
}

let run: readonly (() => unknown)[];
beforeAll(async () => {
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(`${FOLDER}examples.ts`, exampleModule(all, Object.keys(given)));
  const compilerOptions = { noEmit: true, composite: false, emitDeclarationOnly: false };
  writeFileSync(
    `${FOLDER}tsconfig.json`,
    JSON.stringify({ extends: '../../.configs/tsconfig.base.json', include: ['*.ts'], compilerOptions }),
  );
  ({ run } = await import(`${FOLDER}examples.ts`));
});

describe('examples in doc comments', () => {
  it('fit the types', () => {
    const tsc = fileURLToPath(new URL('node_modules/typescript/bin/tsc', PROJECT));
    const { stdout, status } = spawnSync(process.execPath, [tsc, '-p', FOLDER], { encoding: 'utf8' });
    expect([status, stdout]).toEqual([0, '']);
  });

  it.each(all.map((one, index) => ({ ...one, index })))(
    '$expression',
    async ({ expression, gives, index }) => {
      expectAlike(plain(await run[index]()), writtenValue(gives), expression);
    },
  );
});

describe('the library', () => {
  it('says of everything that it exports what it is', () => {
    expect(libraryTypes().length).toBeGreaterThan(25);
    expect([...libraryExports(), ...libraryTypes()].filter((one) => docOf(one) === null)).toEqual([]);
  });

  it('says the units of what its model takes and gives, and the source of each equation', () => {
    const model = libraryExports().filter((one) => isFunction(one) && /^(?:model|analysis)\//.test(one.file));
    expect(model.length).toBeGreaterThan(50);
    const saysUnits = (doc: string) => /\[[^\]]+\]/.test(doc.replace(/@example.*/, ''));
    const saysSource = (doc: string) => !/ Equation /.test(doc) || / Source /.test(doc);
    const silent = model.filter((one) => !saysUnits(docOf(one) ?? '') || !saysSource(docOf(one) ?? ''));
    expect(silent).toEqual([]);
  });

  it('says of every function that refuses something which error that is', () => {
    const refusing = libraryExports().filter((one) => isFunction(one) && refuses(one));
    expect(refusing.length).toBeGreaterThan(20);
    expect(refusing.filter((one) => !/Error\b/.test(docOf(one) ?? ''))).toEqual([]);
  });

  it('shows an example of every function that it exports', () => {
    const functions = libraryExports().filter(isFunction);
    expect(functions.length).toBeGreaterThan(80);
    expect(functions.filter((one) => !docOf(one)?.includes('@example')).map(({ name }) => name)).toEqual([]);
  });
});
