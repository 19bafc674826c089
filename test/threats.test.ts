import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../', import.meta.url));

it('every threat and failure that is listed has a test that is there', () => {
  const [, section] = readFileSync(`${root}DEVELOPERS.md`, 'utf8').split('## Threats and failures\n');
  const rows = section
    .split('\n## ')[0]
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .slice(2);
  expect(rows.length).toBeGreaterThan(20);
  for (const row of rows) {
    const tests = [...row.matchAll(/`(test\/[\w/.]+)`/g)].map(([, path]) => path);
    expect(tests.length, row).toBeGreaterThan(0);
    for (const path of tests) {
      expect(existsSync(root + path), path).toBe(true);
      expect(readFileSync(root + path, 'utf8')).toMatch(/\b(it|test)(\.each)?\(/);
    }
  }
});
