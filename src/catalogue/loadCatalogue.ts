import { activeRecordSchema } from '../schema/activeRecord.ts';
import { bioassayEntrySchema } from '../schema/bioassay.ts';
import {
  type Catalogue,
  cropGroupSchema,
  cropSchema,
  intervalRecordSchema,
  sourceSchema,
} from '../schema/catalogue.ts';
import { clauseEntrySchema, type TracedClause } from '../schema/clauses.ts';
import { countingWindowSchema } from '../schema/countingWindow.ts';
import { type PhResponse, phEntrySchema } from '../schema/phResponse.ts';
import { CATALOGUE_FILES, type CatalogueTexts } from './catalogueFiles.ts';
import {
  ACTIVE_COLUMNS,
  COUNTING_WINDOW_COLUMNS,
  CROP_COLUMNS,
  CROP_GROUP_COLUMNS,
  INTERVAL_COLUMNS,
  SOURCE_COLUMNS,
} from './columns.ts';
import { completeActive } from './completeActive.ts';
import { parseTable, type TableRow } from './parseTable.ts';
import { parseYaml } from './parseYaml.ts';
import { refuseRepeats, refuseUnknown } from './refusals.ts';

/** All records with the lines they stand on, before anything refers to anything. */
function readTables(texts: CatalogueTexts) {
  const files = CATALOGUE_FILES;
  return {
    sources: parseTable(files.sources, texts.sources, SOURCE_COLUMNS, sourceSchema),
    actives: parseTable(files.actives, texts.actives, ACTIVE_COLUMNS, activeRecordSchema),
    phEntries: parseYaml(files.phResponses, texts.phResponses, phEntrySchema),
    crops: parseTable(files.crops, texts.crops, CROP_COLUMNS, cropSchema),
    cropGroups: parseTable(files.cropGroups, texts.cropGroups, CROP_GROUP_COLUMNS, cropGroupSchema),
    intervals: parseTable(files.intervals, texts.intervals, INTERVAL_COLUMNS, intervalRecordSchema),
    clauses: parseYaml(files.clauses, texts.clauses, clauseEntrySchema),
    countingWindows: parseTable(
      files.countingWindows,
      texts.countingWindows,
      COUNTING_WINDOW_COLUMNS,
      countingWindowSchema,
    ),
    bioassay: parseYaml(files.bioassay, texts.bioassay, bioassayEntrySchema),
  };
}
type Tables = ReturnType<typeof readTables>;

/**
 * The catalogue from the text of its files: every cell checked, every reference between files resolved, missing
 * typical half-lives worked out, clauses hung on their rows.
 * @throws {SourceFailedError} CATALOGUE_FAULTY naming file, line and column
 * @example loadCatalogue(readDataFolder('data')).actives[0].isoName // '2,4-D'
 */
export function loadCatalogue(texts: CatalogueTexts): Catalogue {
  const tables = readTables(texts);
  checkNames(tables);
  checkSources(tables);
  checkReferences(tables);

  const phOf = new Map<string, PhResponse>(
    tables.phEntries.map(({ record: { active, ...response } }) => [active, response]),
  );
  const clausesOf = new Map<number, TracedClause[]>();
  for (const { record } of tables.clauses) {
    const { rows, clauses, mark, sources } = record;
    for (const row of rows) {
      clausesOf.set(row, [
        ...(clausesOf.get(row) ?? []),
        ...clauses.map((clause) => ({ ...clause, mark, sources })),
      ]);
    }
  }
  return {
    actives: tables.actives.map(({ line, record }) =>
      completeActive(record, phOf.get(record.isoName) ?? null, { file: CATALOGUE_FILES.actives, line }),
    ),
    crops: recordsOf(tables.crops),
    cropGroups: recordsOf(tables.cropGroups),
    intervals: tables.intervals.map(({ record }) => ({
      ...record,
      clauses: clausesOf.get(record.rowId) ?? [],
    })),
    countingWindows: recordsOf(tables.countingWindows),
    bioassay: recordsOf(tables.bioassay),
    sources: recordsOf(tables.sources),
  };
}

const recordsOf = <T>(rows: readonly TableRow<T>[]) => rows.map(({ record }) => record);

function checkNames({ sources, actives, phEntries, crops, cropGroups, intervals, countingWindows }: Tables) {
  const files = CATALOGUE_FILES;
  refuseRepeats(files.sources, 'id', sources, ({ id }) => [id]);
  refuseRepeats(files.actives, 'iso_name', actives, ({ isoName, aliases }) => [isoName, ...aliases]);
  refuseRepeats(files.phResponses, 'active', phEntries, ({ active }) => [active]);
  refuseRepeats(files.crops, 'name', crops, ({ name, aliases }) => [name, ...aliases]);
  refuseRepeats(files.cropGroups, 'name', cropGroups, ({ name }) => [name]);
  refuseRepeats(files.intervals, 'row_id', intervals, ({ rowId }) => [String(rowId)]);
  refuseRepeats(files.countingWindows, 'id', countingWindows, ({ id }) => [id]);
}

function checkSources(tables: Tables): void {
  const files = CATALOGUE_FILES;
  const known = new Set(tables.sources.map(({ record }) => record.id));
  const check = (file: string, line: number, column: string, cited: readonly string[]) =>
    refuseUnknown({ file, line, column }, cited, known, files.sources);
  for (const { line, record } of tables.actives) {
    for (const [name, provenance] of Object.entries(record.provenance)) {
      const column = ACTIVE_COLUMNS.find(({ path }) => path === `provenance.${name}.sources`)?.column ?? name;
      check(files.actives, line, column, provenance?.sources ?? []);
    }
  }
  for (const { line, record } of tables.crops) {
    check(files.crops, line, 'sensitivity_sources', record.sensitivity?.sources ?? []);
    check(files.crops, line, 'facts_sources', record.use.sources);
  }
  for (const { line, record } of tables.cropGroups) check(files.cropGroups, line, 'sources', record.sources);
  for (const { line, record } of tables.phEntries) check(files.phResponses, line, 'sources', record.sources);
  for (const { line, record } of tables.clauses) check(files.clauses, line, 'sources', record.sources);
  for (const { line, record } of tables.intervals) check(files.intervals, line, 'source', [record.source]);
  for (const { line, record } of tables.countingWindows) {
    check(files.countingWindows, line, 'sources', record.sources);
  }
  for (const { line, record } of tables.bioassay) check(files.bioassay, line, 'sources', record.sources);
}

function checkReferences({
  actives,
  phEntries,
  crops,
  cropGroups,
  intervals,
  clauses,
  bioassay,
}: Tables): void {
  const files = CATALOGUE_FILES;
  const activeNames = new Set(actives.map(({ record }) => record.isoName));
  const cropNames = new Set([...crops, ...cropGroups].map(({ record }) => record.name));
  const rowIds = new Set(intervals.map(({ record }) => String(record.rowId)));
  const eitherCropFile = `${files.crops} or ${files.cropGroups}`;
  for (const { line, record } of intervals) {
    const { active, crop } = record;
    refuseUnknown({ file: files.intervals, line, column: 'active' }, [active], activeNames, files.actives);
    refuseUnknown({ file: files.intervals, line, column: 'crop' }, [crop], cropNames, eitherCropFile);
  }
  for (const { line, record } of phEntries) {
    const place = { file: files.phResponses, line, column: 'active' };
    refuseUnknown(place, [record.active], activeNames, files.actives);
  }
  for (const { line, record } of crops) {
    refuseUnknown({ file: files.crops, line, column: 'part_of' }, record.partOf, cropNames, eitherCropFile);
  }
  for (const { line, record } of bioassay) {
    const place = (column: string) => ({ file: files.bioassay, line, column });
    refuseUnknown(place('actives'), record.actives ?? [], activeNames, files.actives);
    refuseUnknown(place('crop'), record.crop === undefined ? [] : [record.crop], cropNames, files.crops);
  }
  for (const { line, record } of clauses) {
    refuseUnknown(
      { file: files.clauses, line, column: 'rows' },
      record.rows.map(String),
      rowIds,
      files.intervals,
    );
  }
}
