import { describe, expect, it } from 'vitest';
import { notebooks } from '../notebooks/all.ts';
import { caseRows } from '../notebooks/dry-cases.ts';
import { intervalRows } from '../notebooks/dry-year.ts';
import { notebookPage } from '../notebooks/kit/page.ts';
import { worthRows } from '../notebooks/label-worth.ts';
import { checkRows } from '../notebooks/published-checks.ts';
import { swingRows } from '../notebooks/what-matters.ts';

it('a dry year never clears before a wet one, at any of the notebook’s intervals', async () => {
  const rows = await intervalRows();
  expect(rows.length).toBe(6);
  for (const { dry, wet } of rows) {
    expect(wet).not.toBeNull();
    expect(dry ?? Number.POSITIVE_INFINITY).toBeGreaterThan(wet ?? Number.POSITIVE_INFINITY);
  }
});

it('every published value that is not from memory lies within its tolerance', () => {
  const rows = checkRows();
  expect(rows.length).toBeGreaterThan(590);
  for (const { id, quantity, difference, tolerance, mark } of rows) {
    if (mark !== 'from memory')
      expect(Math.abs(difference), `${id} ${quantity}`).toBeLessThanOrEqual(tolerance);
  }
});

it('the label interval is worth least in dry country, at every interval', async () => {
  const { rows } = await worthRows();
  const [dry, middling, humid] = [0, 4, 8].map((from) => rows.slice(from, from + 4));
  for (const [index, { interval, oddsAtLabel }] of dry.entries()) {
    expect(oddsAtLabel, interval).toBeGreaterThan(middling[index].oddsAtLabel);
    expect(middling[index].oddsAtLabel, interval).toBeGreaterThan(humid[index].oddsAtLabel);
  }
});

it('each assumption moves the odds', async () => {
  const { asTaken, rows } = await swingRows();
  expect(asTaken).toBeGreaterThan(0);
  expect(rows.length).toBe(9);
  for (const { name, width } of rows) expect(width, name).toBeGreaterThan(0);
});

it('every published case is shown, misses included', () => {
  const rows = caseRows();
  expect(rows.length).toBe(37);
  expect(rows.filter(({ verdict }) => verdict.startsWith('not agreed')).length).toBeGreaterThan(0);
});

describe('the page of each notebook', () => {
  it.each(notebooks)(
    '$name has a heading, all its cells, and neither script nor style of its own',
    async (notebook) => {
      const page = await notebookPage(notebook);
      const cells = await notebook.cells();
      const count = (pattern: RegExp) => page.match(pattern)?.length ?? 0;
      expect(count(/<h1>/g)).toBe(1);
      expect(count(/<svg /g)).toBe(cells.filter(({ kind }) => kind === 'chart').length);
      expect(count(/<table>/g)).toBe(cells.filter(({ kind }) => kind === 'table').length);
      expect(page).not.toMatch(/<script|<style|style="|\bNaN\b|undefined|\[object/);
    },
  );
});
