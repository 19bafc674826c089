import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runBuilt } from './builtProgram.ts';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const ODDS = [
  ...['odds', '--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil'],
  ...['--applied', '2026-08-14', '--plant', '2027-05-10', '--as-of', '2026-09-30'],
];

interface LockEntry {
  readonly dev?: boolean;
  readonly version?: string;
  readonly dependencies?: Record<string, string>;
  readonly bin?: Record<string, string>;
}
interface Packed {
  readonly filename: string;
  readonly integrity: string;
  readonly files: readonly { readonly path: string }[];
}

let folder: string;
let packed: Packed;

/** Runs a program in the clean folder; what it prints where it ends well. */
function ran(command: string, argv: readonly string[], cwd = folder): string {
  const env = { ...process.env, DRYWAKE_HOME: join(folder, 'store'), NO_COLOR: '1' };
  const { status, stdout, stderr } = spawnSync(command, argv, { cwd, env, encoding: 'utf8' });
  expect([status, status === 0 ? '' : stderr]).toEqual([0, '']);
  return stdout;
}

const readJson = (name: string) => JSON.parse(readFileSync(join(PROJECT, name), 'utf8'));

/** A lock file for a folder in which nothing but the packed program is installed, in the versions tested here. */
function cleanLock() {
  const { packages }: { packages: Record<string, LockEntry> } = readJson('package-lock.json');
  const { '': program, ...others } = packages;
  const needed = Object.fromEntries(Object.entries(others).filter(([, { dev }]) => !dev));
  const { version, dependencies, bin } = program;
  const resolved = `file:${packed.filename}`;
  return {
    ...{ name: 'clean', lockfileVersion: 3, requires: true },
    packages: {
      '': { name: 'clean', dependencies: { drywake: resolved } },
      'node_modules/drywake': { version, resolved, integrity: packed.integrity, dependencies, bin },
      ...needed,
    },
  };
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'drywake-packed-'));
  const pack = ['pack', '--ignore-scripts', '--json', '--pack-destination', folder];
  [packed] = JSON.parse(ran('npm', pack, PROJECT));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the packed program', () => {
  it('holds the program, the page, the data and the types, and nothing else', () => {
    const paths = packed.files.map(({ path }) => path);
    for (const needed of [
      ...['dist/bin/drywake.js', 'dist/bin/worker.js', 'dist/bin/library.js', 'dist/types/src/index.d.ts'],
      ...['dist/web/index.html', 'dist/web/guide/index.html', 'dist/web/notebooks/honest-odds.html'],
      ...['data/actives.csv', 'data/sources.csv', 'README.md', 'package.json'],
    ])
      expect(paths).toContain(needed);
    const allowed =
      /^(dist\/bin\/[^/]+\.(js|txt)|dist\/web\/.+|dist\/types\/src\/.+\.d\.ts|data\/[^/]+\.(csv|yaml|md)|README\.md|package\.json)$/;
    expect(paths.filter((path) => !allowed.test(path))).toEqual([]);
  });

  it('installs in a clean folder, answers there as here, and serves as a library', () => {
    writeFileSync(
      join(folder, 'package.json'),
      JSON.stringify({ name: 'clean', private: true, dependencies: { drywake: `file:${packed.filename}` } }),
    );
    writeFileSync(join(folder, 'package-lock.json'), JSON.stringify(cleanLock()));
    const start = performance.now();
    ran('npm', [
      ...['ci', '--ignore-scripts', '--no-audit', '--no-fund'],
      ...['--prefer-offline', '--fetch-retries=5'],
    ]);
    console.log(`installed in a clean folder in ${Math.round((performance.now() - start) / 1000)} s`);

    const drywake = (...argv: string[]) => ran(join(folder, 'node_modules/.bin/drywake'), argv);
    const printed = drywake(...ODDS);
    expect(printed).toBe(runBuilt(ODDS, join(folder, 'none')).out);
    expect(printed).toContain(`version ${readJson('package.json').version}.`);
    const program =
      "import { temperatureResponse } from 'drywake'; console.log(temperatureResponse(20, 2.58));";
    expect(ran(process.execPath, ['--input-type=module', '-e', program])).toBe('1\n');
  });
});
