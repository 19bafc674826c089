import { readdirSync, readFileSync } from 'node:fs';

const SRC = new URL('../../src/', import.meta.url);

/** An example of a doc comment: an expression, and what it gives. */
export interface Example {
  /** File below src. */
  readonly file: string;
  readonly expression: string;
  /** As written: a literal, numbers to as many digits as are shown. */
  readonly gives: string;
}

const sourceOf = (file: string): string => readFileSync(new URL(file, SRC), 'utf8');

/** Every example of the sources. */
export const examples = (): Example[] =>
  readdirSync(SRC, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .flatMap((file) =>
      [...sourceOf(file).matchAll(/^ \* @example +(.+)$/gm)].map(([, line]) => {
        const at = line.lastIndexOf(' // ');
        if (at < 0) throw new Error(`${file}: an example says after // what it gives: ${line}`);
        return { file, expression: line.slice(0, at), gives: line.slice(at + 4) };
      }),
    );

/** Names that a module exports itself, types left out. */
const exportsOf = (source: string): string[] =>
  [...source.matchAll(/^export (?:async )?(?:function\*?|const|class) (\w+)/gm)].map(([, name]) => name);

/** Names and files of what the library exports, types left out. */
export function libraryExports(): { name: string; file: string }[] {
  const index = sourceOf('index.ts');
  const named = [...index.matchAll(/^export \{([^}]*)\} from '\.\/([^']+)'/gms)].flatMap(([, names, file]) =>
    names
      .split(',')
      .map((one) => one.trim())
      .filter((one) => one !== '' && !one.startsWith('type '))
      .map((name) => ({ name, file })),
  );
  const whole = [...index.matchAll(/^export \* from '\.\/([^']+)'/gm)].flatMap(([, file]) =>
    exportsOf(sourceOf(file)).map((name) => ({ name, file })),
  );
  return [...named, ...whole];
}

/** Names and files of the types that the library exports. */
export function libraryTypes(): { name: string; file: string }[] {
  const index = sourceOf('index.ts');
  const named = [...index.matchAll(/^export (type )?\{([^}]*)\} from '\.\/([^']+)'/gms)].flatMap(
    ([, all, names, file]) =>
      names
        .split(',')
        .map((one) => one.trim())
        .filter((one) => one !== '' && (all !== undefined || one.startsWith('type ')))
        .map((one) => ({ name: one.replace(/^type /, ''), file })),
  );
  const whole = [...index.matchAll(/^export \* from '\.\/([^']+)'/gm)].flatMap(([, file]) =>
    [...sourceOf(file).matchAll(/^export (?:interface|type) (\w+)/gm)].map(([, name]) => ({ name, file })),
  );
  return [...named, ...whole];
}

/** The doc comment right before an exported name; null where there is none. */
export function docOf({ name, file }: { name: string; file: string }): string | null {
  const before = sourceOf(file).slice(0, startOf({ name, file })).trimEnd();
  return before.endsWith('*/') ? before.slice(before.lastIndexOf('/**')) : null;
}

/** Whether the body of an exported function refuses something itself. */
export function refuses({ name, file }: { name: string; file: string }): boolean {
  const from = sourceOf(file).slice(startOf({ name, file }));
  return /\bthrow |\bassertWithin\(/.test(from.slice(0, from.search(/\n\}/)));
}

const startOf = ({ name, file }: { name: string; file: string }): number =>
  sourceOf(file).search(
    new RegExp(`^export (?:async )?(?:function\\*?|const|class|interface|type) ${name}\\b`, 'm'),
  );

/** Whether an exported name is a function. */
export const isFunction = ({ name, file }: { name: string; file: string }): boolean =>
  new RegExp(
    `^export (?:async )?function\\*? ${name}\\b|^export const ${name} = (?:async )?(?:<[^>]*>)?\\(`,
    'm',
  ).test(sourceOf(file));

/** A module whose `run` holds every example as a function; its names come from the library, the file, and given.ts. */
export function exampleModule(all: readonly Example[], given: readonly string[]): string {
  const library = libraryExports().map(({ name }) => name);
  const isUsed = (name: string) => all.some(({ expression }) => new RegExp(`\\b${name}\\b`).test(expression));
  const inside = new Map<string, Set<string>>();
  for (const { file, expression } of all) {
    for (const name of exportsOf(sourceOf(file))) {
      if (library.includes(name) || !new RegExp(`\\b${name}\\b`).test(expression)) continue;
      inside.set(file, (inside.get(file) ?? new Set()).add(name));
    }
  }
  return [
    `import { ${library.filter(isUsed).join(', ')} } from '../../src/index.ts';`,
    `import { ${given.filter(isUsed).join(', ')} } from '../../test/examples/given.ts';`,
    ...[...inside].map(([file, names]) => `import { ${[...names].join(', ')} } from '../../src/${file}';`),
    'export const run: readonly (() => unknown)[] = [',
    ...all.map(
      ({ expression }) => `  ${expression.includes('await ') ? 'async ' : ''}() => (${expression}),`,
    ),
    '];',
    '',
  ].join('\n');
}
