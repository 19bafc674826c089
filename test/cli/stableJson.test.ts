import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { COMMANDS } from '../../src/cli/commandList.ts';
import { answerSchema } from '../../src/schema/answer.ts';
import { backupSchema, restoreResultSchema } from '../../src/schema/backup.ts';
import { batchSchema } from '../../src/schema/batch.ts';
import { bioassayGuideSchema } from '../../src/schema/bioassay.ts';
import { activeViewSchema, catalogueListSchema } from '../../src/schema/catalogueView.ts';
import { comparisonSchema, cropGridSchema } from '../../src/schema/comparison.ts';
import { fetchSummarySchema } from '../../src/schema/fetchSummary.ts';
import { fieldAnswerSchema, refreshSchema } from '../../src/schema/fieldAnswer.ts';
import { fieldListSchema, fieldRecordSchema, storedFieldSchema } from '../../src/schema/fieldRecord.ts';
import { hindcastSchema } from '../../src/schema/hindcast.ts';
import { importSummarySchema } from '../../src/schema/importSummary.ts';
import { keptLabelSchema, labelEntrySchema, labelListSchema } from '../../src/schema/labelEntry.ts';
import { modelUsedSchema } from '../../src/schema/modelUsed.ts';
import { nearestStationsSchema } from '../../src/schema/place.ts';
import { regionQuestionSchema, regionRowSchema } from '../../src/schema/region.ts';
import { applicationRecordSchema } from '../../src/schema/restrictedUse.ts';
import { sheetSchema } from '../../src/schema/sheet.ts';
import { stationCheckSchema } from '../../src/schema/stationCheck.ts';
import { stationNormalsSchema } from '../../src/schema/stationNormals.ts';
import { tableImportSchema } from '../../src/schema/tableImport.ts';
import { stationExtentSchema } from '../../src/schema/weather.ts';
import { weatherExportSchema } from '../../src/schema/weatherExport.ts';
import { recordFiles, STATION, startRecordService } from '../built/documents/recordService.ts';
import { tempFolderOfFile } from '../tempFolder.ts';
import { namesBelow, optionsOf } from './helpOf.ts';
import { runDrywake } from './runDrywake.ts';

const AT = ['--station', 'demo-invented'];
const SPRAYED = ['--residual', 'flumioxazin', '--applied', '2026-08-14'];
const BEFORE = ['--crop', 'lentil', '--plant', '2027-05-10'];
const FIELD = 'invented-home';

const asked = {
  ...{ residual: z.string(), crop: z.string(), question: regionQuestionSchema },
  ...{ cautions: z.array(z.string()), model: modelUsedSchema },
};
const regionSchema = z.strictObject({ stations: z.int(), ...asked, rows: z.array(regionRowSchema) });
const featuresSchema = z.strictObject({
  type: z.literal('FeatureCollection'),
  about: z.strictObject(asked),
  features: z.array(
    z.strictObject({
      ...{ type: z.literal('Feature'), id: z.string() },
      geometry: z
        .strictObject({ type: z.literal('Point'), coordinates: z.array(z.number()).min(2).max(3) })
        .nullable(),
      properties: regionRowSchema.omit({ latitudeDeg: true, longitudeDeg: true, elevationM: true }),
    }),
  ),
});
const stationListSchema = z.strictObject({ stations: z.array(stationExtentSchema) });
const compactedSchema = z.strictObject({ rows: z.int(), scatteredFiles: z.int() });
const shownFieldSchema = z.strictObject({ field: storedFieldSchema, answers: z.array(fieldAnswerSchema) });
const fieldsSchema = z.strictObject({ fields: z.array(fieldRecordSchema) });
const labelsSchema = z.strictObject({ labels: z.array(labelEntrySchema) });

/**
 * Commands with JSON in an order in which they can be run one after the other, and the schema that holds every key of it.
 * Those that change something are run once, the others twice. A word in capitals stands for a file or an address.
 */
const RUNS: readonly (readonly [readonly string[], z.ZodType, 'changes'?])[] = [
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
  [['region', ...SPRAYED, ...BEFORE, '--workers', '0'], regionSchema],
  [['region', ...SPRAYED, ...BEFORE, '--workers', '0', '--geojson'], featuresSchema],
  [['catalogue', 'list'], catalogueListSchema],
  [['catalogue', 'show', 'imazethapyr', '--crop', 'lentil'], activeViewSchema],
  [['labels', 'import', 'LABELS'], tableImportSchema, 'changes'],
  [['labels', 'list'], labelListSchema],
  [['labels', 'show', 'shed'], keptLabelSchema],
  [['labels', 'export'], labelsSchema],
  [['fields', 'import', 'FIELDS'], tableImportSchema, 'changes'],
  [['fields', 'list'], fieldListSchema],
  [['fields', 'show', FIELD], shownFieldSchema],
  [['fields', 'record', FIELD], applicationRecordSchema],
  [['fields', 'export'], fieldsSchema],
  [['refresh'], refreshSchema, 'changes'],
  [['fields', 'backup'], backupSchema],
  [['fields', 'import', 'MENDED'], tableImportSchema, 'changes'],
  [['fields', 'undo', FIELD], storedFieldSchema, 'changes'],
  [['fields', 'restore', 'BACKUP', '--replace'], restoreResultSchema, 'changes'],
  [['weather', 'check', 'demo-invented'], stationCheckSchema],
  [['weather', 'normals', 'demo-invented', '--from', '05-01', '--to', '08-31'], stationNormalsSchema],
  [['weather', 'near', '--lat', '45.7', '--lon', '-111'], nearestStationsSchema],
  [['weather', 'import', 'RECORDS'], importSummarySchema, 'changes'],
  [['weather', 'fetch', STATION, '--records', 'SERVICE'], fetchSummarySchema, 'changes'],
  [['weather', 'compact'], compactedSchema, 'changes'],
  [['weather', 'export', '--parquet', 'PARQUET'], weatherExportSchema, 'changes'],
  [['weather', 'list'], stationListSchema],
];

const FIELDS_CSV = `farm,field,station,soil_ph,treatment,applied_on,residual,interval,plan,crop,plant_on
Invented,Home,demo-invented,7.1,stubble,2026-08-14,flumioxazin,4 months,lentil,lentil,2027-05-10
`;
const LABELS_CSV = `name,label_version,entered_on,active_1,crop,interval
Shed,invented,2026-07-01,flumioxazin,lentil,4 months
`;

const folder = tempFolderOfFile();
const words: Record<string, string> = {};
let service: Awaited<ReturnType<typeof startRecordService>>;
beforeAll(async () => {
  const { byStation, stations } = recordFiles();
  mkdirSync(join(folder, 'records'));
  const texts = {
    LIST: ['list.csv', (await runDrywake(['batch', '--template'], folder)).out],
    FIELDS: ['fields.csv', FIELDS_CSV],
    MENDED: ['mended.csv', FIELDS_CSV.replace('7.1', '7.4')],
    LABELS: ['labels.csv', LABELS_CSV],
    RECORD: [`records/${STATION}.csv`, byStation],
    STATIONS: ['records/ghcnd-stations.txt', stations],
  } as const;
  for (const [word, [name, text]] of Object.entries(texts)) {
    words[word] = join(folder, name);
    writeFileSync(words[word], text);
  }
  for (const [word, name] of [
    ['RECORDS', 'records'],
    ['BACKUP', 'backup.json'],
    ['PARQUET', 'parquet'],
  ])
    words[word] = join(folder, name);
  service = await startRecordService();
  words.SERVICE = service.address;
});
afterAll(() => service.close());

const printed = async (argv: readonly string[]) => {
  const { code, out, err } = await runDrywake([...argv.map((word) => words[word] ?? word), '--json'], folder);
  expect([code, code === 0 ? '' : err]).toEqual([0, '']);
  return out;
};

describe('what --json prints', () => {
  it.each(
    RUNS.map(([argv, schema, changes]) => ({ name: argv.slice(0, 2).join(' '), argv, schema, changes })),
  )(
    '$name: one JSON text with the keys of its schema and no other, the same each time',
    async ({ argv, schema, changes }) => {
      const first = await printed(argv);
      expect(first.endsWith('}\n')).toBe(true);
      const value = JSON.parse(first);
      // What a schema does not know it leaves out, so an unknown key shows in the comparison.
      expect(schema.parse(value)).toEqual(value);
      if (argv[1] === 'backup') writeFileSync(words.BACKUP, first);
      if (changes) return;
      const [once, again] = [first, await printed(argv)].map((one) =>
        one.replace(/"madeAt": ?"[^"]*"/g, '"madeAt":""'),
      );
      expect(again).toBe(once);
    },
  );

  it('is asked above of every command that has it', async () => {
    const lacking: string[] = [];
    let count = 0;
    for (const { name } of COMMANDS) {
      const below = await namesBelow([name], folder);
      for (const argv of below.length === 0 ? [[name]] : below.map((sub) => [name, sub])) {
        if (!(await optionsOf(argv, folder)).includes('--json')) continue;
        count++;
        const isTried = RUNS.some(([one]) => argv.every((word, index) => one[index] === word));
        if (!isTried) lacking.push(argv.join(' '));
      }
    }
    expect(lacking).toEqual([]);
    expect(count).toBeGreaterThan(25);
  });
});
