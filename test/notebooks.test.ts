import { readFileSync } from 'node:fs';
import { Socket } from 'node:net';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { notebooks } from '../notebooks/all.ts';
import { caseRows } from '../notebooks/dry-cases.ts';
import { intervalRows } from '../notebooks/dry-year.ts';
import { honestRows } from '../notebooks/honest-odds.ts';
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

/** What the README says of accuracy. */
const README = readFileSync(new URL('../README.md', import.meta.url), 'utf8');

it('every published value that is not from memory lies within its tolerance', () => {
  const rows = checkRows();
  const gating = rows.filter(({ mark }) => mark !== 'from memory').length;
  expect(README).toContain(`| ${rows.length}, of which ${gating} were seen and gate |`);
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
  expect(rows.map(({ name }) => name).toSorted()).toEqual([
    ...['Q10', 'base period', 'ground cover', 'label margin q', 'label-basis rain'],
    ...['moisture exponent B', 'moisture response', 'soil', 'spread between soils σ'],
  ]);
  for (const { name, width } of rows) expect(width, name).toBeGreaterThan(0);
});

it('every published case is shown, misses included', () => {
  const rows = caseRows();
  expect(rows.length).toBe(37);
  expect(rows.filter(({ verdict }) => verdict.startsWith('not agreed')).length).toBeGreaterThan(0);
});

it('the odds are honest wherever they are looked back on, as far as chance leaves', async () => {
  const { isReal, rows } = await honestRows();
  expect(rows.length).toBe(isReal ? 12 : 3);
  for (const { place, years, bands, baseRate } of rows) {
    expect(years, place).toBeGreaterThan(50);
    expect(bands, place).toBeGreaterThan(0);
    expect(baseRate, place).toBeGreaterThan(0);
  }
  const sum = (of: 'bands' | 'outside') => rows.reduce((total, row) => total + row[of], 0);
  if (isReal)
    expect(README).toContain(`12 looks back at an invented and three real places, ${sum('bands')} bands`);
  // A 95 % interval leaves one band in twenty outside by chance.
  expect(sum('outside')).toBeLessThanOrEqual(Math.ceil(sum('bands') / 20));
});

describe('the page of each notebook, with every connection refused', () => {
  beforeEach(() => {
    vi.spyOn(Socket.prototype, 'connect').mockImplementation(() => {
      throw new Error('A notebook asked for the network.');
    });
  });
  afterEach(() => vi.restoreAllMocks());

  it.each(notebooks)(
    '$name has a heading, all its cells, and neither script nor style of its own',
    async (notebook) => {
      const cells = await notebook.cells();
      const page = await notebookPage({ ...notebook, cells: async () => cells });
      const count = (pattern: RegExp) => page.match(pattern)?.length ?? 0;
      expect(count(/<h1>/g)).toBe(1);
      expect(count(/ data-cell="/g)).toBe(cells.length);
      expect(page).toContain(`data-cells="${cells.length}"`);
      expect(page).toMatch(/Drywake \d+\.\d+\.\d+/);
      // A chart is drawn for a phone and for a wider page.
      expect(count(/<svg /g)).toBe(2 * cells.filter(({ kind }) => kind === 'chart').length);
      expect(count(/<table[ >]/g)).toBe(cells.filter(({ kind }) => kind === 'table').length);
      expect(page).not.toMatch(/<script|<style|style="|\bNaN\b|undefined|\[object/);
    },
  );
});
