import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/**
 * The import directions of DEVELOPERS.md, read from the import lines of every file. A part may import itself and
 * what stands here; `type:` allows only `import type`.
 */
const ALLOWED: Record<string, readonly string[]> = {
  errors: [],
  units: [],
  quantities: ['units'],
  calendar: ['errors'],
  dateWords: ['calendar'],
  schema: ['units', 'schema-constants'],
  'schema-constants': ['type:quantities'],
  model: ['errors', 'units', 'calendar', 'schema-constants', 'type:schema'],
  analysis: ['model', 'errors', 'units', 'calendar', 'schema-constants', 'type:schema'],
  chart: ['units', 'calendar', 'dateWords', 'type:schema', 'type:analysis'],
  catalogue: ['schema', 'schema-constants', 'errors', 'units', 'type:model'],
  demo: ['schema', 'schema-constants', 'errors', 'units', 'calendar', 'model', 'type:app'],
  store: ['schema', 'schema-constants', 'errors', 'units', 'calendar'],
  source: ['schema', 'schema-constants', 'errors', 'units', 'calendar'],
  app: [
    ...[
      'analysis',
      'chart',
      'catalogue',
      'schema',
      'schema-constants',
      'errors',
      'units',
      'calendar',
      'dateWords',
      'quantities',
      'model',
    ],
    ...['type:store', 'type:source'],
  ],
  worker: ['app', 'catalogue', 'errors', 'type:schema'],
  http: ['app', 'schema', 'schema-constants', 'errors', 'units', 'dateWords', 'type:catalogue'],
  cli: [
    'app',
    'http',
    'schema',
    'schema-constants',
    'errors',
    'units',
    'calendar',
    'dateWords',
    'quantities',
  ],
  main: ['cli', 'app', 'worker', 'http', 'store', 'source', 'catalogue', 'demo', 'schema', 'errors'],
  index: [
    'app',
    'analysis',
    'model',
    'schema',
    'schema-constants',
    'errors',
    'units',
    'calendar',
    'dateWords',
    'catalogue',
    'demo',
    'chart',
    'source',
  ],
  web: [
    'chart',
    'units',
    'quantities',
    'calendar',
    'dateWords',
    'schema-constants',
    'type:schema',
    'type:http',
    'schema',
  ],
  // Notebooks show the tests' own cases; those too compute through the library alone, see below.
  notebooks: ['index', 'test'],
  // The guide's pages stand in the same frame.
  guide: ['notebooks'],
};

const root = fileURLToPath(new URL('../', import.meta.url));

function filesUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|js|html)$/.test(name) && !name.endsWith('.d.ts'))
    .map((name) => join(folder, name));
}

/** Files of the command line that build stores and readers. */
const MAIN = new Set(['src/cli/main.ts', 'src/cli/realDeps.ts', 'src/cli/realDesk.ts']);

/** Files of the schemas that hold no Zod. */
const CONSTANTS = new Set(
  ['codes', 'soil', 'fieldNames', 'assumptionList', 'usStates'].map((name) => `src/schema/${name}.ts`),
);

/** The part a file of the project belongs to; null for packages. */
function partOf(path: string): string | null {
  const [top, second] = path.split('/');
  if (path.startsWith('web/guide/')) return 'guide';
  if (top !== 'src') return ['web', 'notebooks', 'test'].includes(top) ? top : null;
  if (MAIN.has(path)) return 'main';
  if (CONSTANTS.has(path)) return 'schema-constants';
  return second.replace(/\.ts$/, '');
}

interface ImportLine {
  readonly file: string;
  readonly target: string;
  readonly typeOnly: boolean;
}

/** Imports and re-exports of a file that lead to other files of the project. */
function importsOf(file: string): ImportLine[] {
  const text = readFileSync(join(root, file), 'utf8');
  const statements = text.matchAll(
    /(?:^|\n)\s*(?:import|export)\s+(type\s+)?([^'"`;]*?from\s+)?['"](\.[^'"]+)['"]/g,
  );
  const dynamic = text.matchAll(/import\((?:\s*)['"](\.[^'"]+)['"]/g);
  const at = (path: string) => relative(root, join(root, dirname(file), path));
  return [
    ...[...statements].map(([, type, names, path]) => ({
      file,
      target: at(path),
      typeOnly: type !== undefined || isTypeOnly(names ?? ''),
    })),
    ...[...dynamic].map(([, path]) => ({ file, target: at(path), typeOnly: false })),
  ];
}

/** `{ type A, type B } from` imports nothing at run time. */
function isTypeOnly(names: string): boolean {
  const inner = /\{([^}]*)\}/.exec(names)?.[1];
  if (inner === undefined) return false;
  const parts = inner
    .split(',')
    .map((part) => part.trim())
    .filter(Boolean);
  return parts.length > 0 && parts.every((part) => part.startsWith('type '));
}

function forbidden({ file, target, typeOnly }: ImportLine): boolean {
  const from = partOf(file) ?? '';
  const to = partOf(target);
  if (to === null || from === to) return false;
  const allowed = ALLOWED[from] ?? [];
  return !(allowed.includes(to) || (typeOnly && allowed.includes(`type:${to}`)));
}

describe('import directions', () => {
  const files = [...filesUnder('src'), ...filesUnder('web'), ...filesUnder('notebooks')];
  const lines = files.flatMap(importsOf);

  it('reads the import lines of the whole tree', () => {
    expect(files.length).toBeGreaterThan(60);
    expect(lines.length).toBeGreaterThan(100);
    expect(files.map(partOf).filter((part) => part === null || !(part in ALLOWED))).toEqual([]);
  });

  it('finds a forbidden import when there is one', () => {
    const bad: ImportLine = { file: 'src/model/x.ts', target: 'src/store/y.ts', typeOnly: false };
    expect(forbidden(bad)).toBe(true);
    expect(forbidden({ ...bad, target: 'src/schema/weather.ts' })).toBe(true);
    expect(forbidden({ ...bad, target: 'src/schema/weather.ts', typeOnly: true })).toBe(false);
    expect(forbidden({ ...bad, target: 'test/x.ts', typeOnly: true })).toBe(true);
  });

  it('allows no other', () => {
    expect(lines.filter(forbidden).map(({ file, target }) => `${file} -> ${target}`)).toEqual([]);
  });

  it('lets notebooks, and the cases they show, compute through the public library alone', () => {
    const reached = new Set<string>();
    const inward: string[] = [];
    const visit = (file: string) => {
      if (reached.has(file)) return;
      reached.add(file);
      for (const { target, typeOnly } of importsOf(file)) {
        if (target.startsWith('src/'))
          inward.push(...(target === 'src/index.ts' ? [] : [`${file} -> ${target}`]));
        else if (target.endsWith('.ts') && !typeOnly) visit(target);
      }
    };
    for (const file of filesUnder('notebooks')) visit(file);
    expect([...reached].some((file) => file.startsWith('test/published/'))).toBe(true);
    expect(inward).toEqual([]);
  });

  it('takes everything of notebooks from this folder or by the bare name of a package', () => {
    const packages = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const known = Object.keys({ ...packages.dependencies, ...packages.devDependencies });
    const bare = filesUnder('notebooks').flatMap((file) =>
      [
        ...readFileSync(join(root, file), 'utf8').matchAll(
          /^(?:import|export|\}) ?(?:.* )?from '([^.'][^']*)';$/gm,
        ),
      ].map(([, name]) => name),
    );
    expect(bare).toContain('arquero');
    const isKnown = (name: string) =>
      name.startsWith('node:') || known.some((one) => name === one || name.startsWith(`${one}/`));
    expect(bare.filter((name) => !isKnown(name))).toEqual([]);
  });

  it('lets one file of the page ask the writer of dates, and nothing else write any', () => {
    const asking = lines.filter(
      ({ target, file }) => target === 'src/dateWords.ts' && file.startsWith('web/'),
    );
    expect([...new Set(asking.map(({ file }) => file))]).toEqual(['web/src/units/dates.ts']);
    const writers = files.filter((file) =>
      /DateTimeFormat|toLocale(?:Date|Time)?String\(\s*(?:\)|'[\w-]+',\s*\{[^}]*(?:day|month))|'January'/.test(
        readFileSync(join(root, file), 'utf8'),
      ),
    );
    expect(writers).toEqual(['src/dateWords.ts']);
  });

  it('lets tests draw their values through the one file that sets the seed', () => {
    const drawing = filesUnder('test').filter((file) =>
      /^import .*'fast-check';$/m.test(readFileSync(join(root, file), 'utf8')),
    );
    expect(drawing).toEqual(['test/fastCheck.ts']);
  });

  it('keeps files, network, clock and environment out of model and analysis', () => {
    const impure = /from 'node:|process\.|Date\.now|new Date|fetch\(|Math\.random|console\./;
    const found = [...filesUnder('src/model'), ...filesUnder('src/analysis')].filter((file) =>
      impure.test(readFileSync(join(root, file), 'utf8')),
    );
    expect(found).toEqual([]);
  });
});
