import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { answerSchema } from '../../src/schema/answer.ts';
import { backupSchema } from '../../src/schema/backup.ts';
import { batchSchema } from '../../src/schema/batch.ts';
import { bioassayGuideSchema } from '../../src/schema/bioassay.ts';
import { activeViewSchema, catalogueListSchema } from '../../src/schema/catalogueView.ts';
import { comparisonSchema, cropGridSchema } from '../../src/schema/comparison.ts';
import { fieldListSchema } from '../../src/schema/fieldRecord.ts';
import { hindcastSchema } from '../../src/schema/hindcast.ts';
import { labelListSchema } from '../../src/schema/labelEntry.ts';
import { nearestStationsSchema } from '../../src/schema/place.ts';
import { sheetSchema } from '../../src/schema/sheet.ts';
import { stationCheckSchema } from '../../src/schema/stationCheck.ts';
import { stationNormalsSchema } from '../../src/schema/stationNormals.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const AT = ['--station', 'demo-invented'];
const SPRAYED = ['--residual', 'flumioxazin', '--applied', '2026-08-14'];
const BEFORE = ['--crop', 'lentil', '--plant', '2027-05-10'];

/** Commands with JSON, and the schema that the interface promises for it; null where a command has a shape of its own. */
const COMMANDS: readonly (readonly [readonly string[], z.ZodType | null])[] = [
  [['odds', ...AT, ...SPRAYED, ...BEFORE], answerSchema],
  [['odds', ...AT, ...SPRAYED, ...BEFORE, '--season'], answerSchema],
  [['compare', ...AT, '--applied', '2026-08-14', ...BEFORE], comparisonSchema],
  [['crops', ...AT, ...SPRAYED, '--plant-from', '2027-04-15', '--plant-to', '2027-05-15'], cropGridSchema],
  [['sheet', ...AT, ...SPRAYED, ...BEFORE, '--interval', '4 months'], sheetSchema],
  [['bioassay', '--residual', 'imazethapyr', '--crop', 'lentil'], bioassayGuideSchema],
  [
    ['hindcast', ...AT, ...SPRAYED, ...BEFORE, '--leads', '60', '--base', '1996-2025', '--workers', '0'],
    hindcastSchema,
  ],
  [['batch', 'LIST', '--workers', '0'], batchSchema],
  [['region', ...SPRAYED, ...BEFORE, '--workers', '0'], null],
  [['region', ...SPRAYED, ...BEFORE, '--workers', '0', '--geojson'], null],
  [['catalogue', 'list'], catalogueListSchema],
  [['catalogue', 'show', 'imazethapyr', '--crop', 'lentil'], activeViewSchema],
  [['weather', 'list'], null],
  [['weather', 'check', 'demo-invented'], stationCheckSchema],
  [['weather', 'normals', 'demo-invented', '--from', '05-01', '--to', '08-31'], stationNormalsSchema],
  [['weather', 'near', '--lat', '45.7', '--lon', '-111'], nearestStationsSchema],
  [['fields', 'list'], fieldListSchema],
  [['labels', 'list'], labelListSchema],
  [['fields', 'backup'], backupSchema],
];

describe('what --json prints', () => {
  it.each(COMMANDS.map(([argv, schema]) => ({ name: argv.slice(0, 2).join(' '), argv, schema })))(
    '$name: one JSON text, as its schema has it, the same each time',
    async ({ argv, schema }) => {
      const folder = tempFolder();
      const list = join(folder, 'list.csv');
      const words = argv.map((word) => (word === 'LIST' ? list : word));
      writeFileSync(list, (await runDrywake(['batch', '--template'], folder)).out);
      const prints = [];
      for (let time = 0; time < 2; time++) {
        const { code, out } = await runDrywake([...words, '--json'], folder);
        expect(code).toBe(0);
        prints.push(out);
      }
      const [first, second] = prints.map((one) => one.replace(/"madeAt": ?"[^"]*"/g, '"madeAt":""'));
      expect(second).toBe(first);
      expect(first.endsWith('}\n') || first.endsWith(']\n')).toBe(true);
      const value = JSON.parse(prints[0]);
      if (schema) expect(schema.safeParse(value).error?.issues ?? []).toEqual([]);
      else expect(Object.keys(value).length).toBeGreaterThan(0);
    },
  );
});
