import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = new URL('../', import.meta.url);

it('names no test in a doc comment that is not there', () => {
  const sources = readdirSync(fileURLToPath(new URL('src', root)), { recursive: true, encoding: 'utf8' });
  const named = sources
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) =>
      Array.from(
        readFileSync(new URL(`src/${file}`, root), 'utf8').matchAll(/\btest\/[\w/-]+\.(?:test\.ts|json)\b/g),
        ([path]) => ({ file, path }),
      ),
    );
  expect(named.length).toBeGreaterThan(40);
  expect(named.filter(({ path }) => !existsSync(new URL(path, root)))).toEqual([]);
});
