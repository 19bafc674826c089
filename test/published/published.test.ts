import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { caseFileSchema, type PublishedCase, publishedValues } from './caseSchema.ts';
import { REGISTRY } from './registry.ts';

const FOLDER = new URL('./', import.meta.url);

/** Cases that must be there, by id. */
const REQUIRED = [
  ...['C-RA-1', 'C-RA-2', 'C-RA-3', 'C-RA-4', 'C-RA-5'],
  ...['54N', '48N', '40N', '36N', '30N', '0', '10S'].map((latitude) => `C-RA-T-${latitude}`),
  ...['march', 'december'].flatMap((m) => [`C-DOY-1-${m}-common`, `C-DOY-1-${m}-leap`]),
  'C-DOY-1-september-common',
  'C-ET-1',
  ...['C-EV-1', 'C-EV-1b', 'C-EV-2'],
  ...[
    'sand',
    'loamy-sand',
    'sandy-loam',
    'loam',
    'silt-loam',
    'silt',
    'clay-loam',
    'sandy-clay',
    'clay',
  ].flatMap((soil) => [`C-SW-${soil}`, `C-SW-${soil}-table`]),
  ...['C-T-q10-2.2', 'C-T-q10-2.58', 'C-T-arrhenius'],
  ...['C-W', 'C-N-1', 'C-N-2', 'C-N-3', 'C-N-4', 'C-N-5', 'C-N-6'],
  ...['C-INT-1', 'C-FOL-1', 'C-WO-1-005', 'C-WO-1-010', 'C-WO-2'],
  ...['cereals', 'maize', 'oilseed-rape', 'soybean', 'pea', 'bean', 'sunflower', 'sugar-beet'].map(
    (crop) => `EPPO-207-${crop}`,
  ),
  ...['potato', 'cotton', 'linseed', 'grass', 'established-turf'].map((crop) => `EPPO-207-${crop}`),
  ...['1', '2', '3', '4', '5', '6a', '6b', '6c', '7a', '7b'].map((number) => `C-CI-${number}-wilson`),
  ...['2', '3', '4', '7a', '7b'].map((number) => `C-CI-${number}-jeffreys`),
  ...['scattered-10', 'running-5', 'scattered-11', 'accumulated', 'normal-23', 'normal-24'].map(
    (name) => `C-QC-1-${name}`,
  ),
  ...['C-BS-1', 'C-BS-2'],
  ...['C-PEC-1', 'C-PEC-2', 'C-PEC-3'],
  ...['C-NR-1', 'C-PP-1', 'C-PP-2'],
  ...['C-WT-1', 'C-WG-1', 'C-WG-2-january', 'C-WG-2-april', 'C-WG-2-december'],
];

const fileNames = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
const files = fileNames.map((name) => ({
  name,
  ...caseFileSchema.parse(JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8'))),
}));
const cases = files.flatMap((file) => file.cases);

/** Lines of the printed table; one per published value that was compared. */
const table: string[] = [];
let compared = 0;

const shown = (value: number): string => String(Number(value.toPrecision(7)));

/** Compares every value of a case, prints a line for each and returns the lines that are over. */
function compare(one: PublishedCase): string[] {
  const adapter = REGISTRY[one.equation];
  if (adapter === undefined) throw new Error(`${one.id}: the registry has no equation ${one.equation}`);
  const outputs = adapter(one.inputs);
  const over: string[] = [];
  for (const { quantity, index, published, tolerance, unit } of publishedValues(one)) {
    const name = index === null ? quantity : `${quantity} ${index + 1}`;
    if (tolerance === undefined) throw new Error(`${one.id}: no tolerance for ${name}`);
    if (unit === undefined) throw new Error(`${one.id}: no unit for ${name}`);
    const output = outputs[quantity];
    if (output === undefined) throw new Error(`${one.id}: ${one.equation} gives no ${quantity}`);
    if (Array.isArray(output) !== (index !== null))
      throw new Error(`${one.id}: ${name} is not alike in shape`);
    const given = one.expected[quantity];
    if (Array.isArray(output) && Array.isArray(given) && output.length !== given.length) {
      throw new Error(
        `${one.id}: ${given.length} values of ${quantity} published, ${output.length} computed`,
      );
    }
    const computed = Array.isArray(output) ? output[index ?? 0] : output;
    const difference = computed - published;
    const within = Math.abs(difference) <= tolerance;
    const gates = one.mark !== 'from memory';
    const line = [
      one.id.padEnd(26),
      name.padEnd(33),
      shown(computed).padStart(11),
      shown(published).padStart(10),
      difference.toExponential(1).padStart(9),
      tolerance.toExponential(1).padStart(8),
      `${unit.padEnd(13)} ${one.mark}${gates ? '' : ', does not gate'}${within ? '' : ' <- OVER'}`,
    ].join(' ');
    table.push(line);
    compared += 1;
    if (!within && gates) over.push(line);
    if (!Number.isFinite(computed)) throw new Error(`${one.id}: ${name} is ${computed}`);
  }
  return over;
}

describe('published values', () => {
  it('has case files, each with cases', () => {
    expect(fileNames.length).toBeGreaterThan(0);
    expect(cases.length).toBeGreaterThan(0);
  });

  it('has every required case, each id once, and no equation without a case', () => {
    const ids = cases.map((one) => one.id);
    expect(REQUIRED.filter((id) => !ids.includes(id))).toEqual([]);
    expect(ids.filter((id, place) => ids.indexOf(id) !== place)).toEqual([]);
    const used = new Set(cases.map((one) => one.equation));
    expect(Object.keys(REGISTRY).filter((equation) => !used.has(equation))).toEqual([]);
  });

  describe.each(files)('$name', ({ cases: own }) => {
    it.each(own)('$id', (one) => {
      expect(compare(one)).toEqual([]);
    });
  });

  it('compared every value of every file', () => {
    const published = cases.reduce((sum, one) => sum + publishedValues(one).length, 0);
    expect(compared).toBe(published);
  });

  afterAll(() => {
    const head = [
      'case'.padEnd(26),
      'quantity'.padEnd(33),
      'computed'.padStart(11),
      'published'.padStart(10),
      'diff'.padStart(9),
      'allowed'.padStart(8),
      'unit          mark',
    ].join(' ');
    process.stdout.write(`\n${head}\n${table.join('\n')}\n${table.length} values compared\n`);
  });
});
