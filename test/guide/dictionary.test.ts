import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { COMMON_FIELDS } from './commonFields.ts';
import { dictionary, interfaceDocument, rowsOf } from './dictionary.ts';

const PAGE = new URL('../../web/guide/dictionary.md', import.meta.url);

it('the data dictionary is the one of the schemas (UPDATE_DOCUMENTS=1 rewrites it)', async () => {
  const made = dictionary(await interfaceDocument());
  if (process.env.UPDATE_DOCUMENTS) writeFileSync(PAGE, made);
  else expect(readFileSync(PAGE, 'utf8')).toBe(made);
});

it('every field of every shape has a meaning, and no common meaning is left over', async () => {
  const { components } = await interfaceDocument();
  const rows = Object.entries(components.schemas).flatMap(([shape, fields]) =>
    rowsOf(fields).map((row) => ({ ...row, shape })),
  );
  expect(rows.length).toBeGreaterThan(800);
  expect(rows.filter(({ meaning }) => meaning === '').map(({ shape, field }) => `${shape}.${field}`)).toEqual(
    [],
  );
  const used = new Set(rows.map(({ meaning }) => meaning));
  expect(Object.entries(COMMON_FIELDS).filter(([, meaning]) => !used.has(meaning))).toEqual([]);
});
