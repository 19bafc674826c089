import {
  activeSchema,
  type Catalogue,
  cropSchema,
  intervalRowSchema,
  type Provenance,
  sourceSchema,
} from '../schema/catalogue.ts';
import { ACTIVE_COLUMNS, CROP_COLUMNS, INTERVAL_COLUMNS, SOURCE_COLUMNS } from './columns.ts';
import { catalogueFault, parseTable, type TableRow } from './parseTable.ts';
import { spellingOf } from './spelling.ts';

/** File names of the catalogue, in its data folder. */
export const CATALOGUE_FILES = {
  actives: 'actives.csv',
  crops: 'crops.csv',
  intervals: 'intervals.csv',
  sources: 'sources.csv',
} as const;

/** Text of each of those files. */
export type CatalogueTexts = Readonly<Record<keyof typeof CATALOGUE_FILES, string>>;

/**
 * The catalogue from the text of its files: every cell checked, every reference between files resolved.
 * @throws {SourceFailedError} CATALOGUE_FAULTY naming file, line and column
 * @example loadCatalogue(readDataFolder('data')).actives[0].isoName // 'chlorsulfuron'
 */
export function loadCatalogue(texts: CatalogueTexts): Catalogue {
  const files = CATALOGUE_FILES;
  const sources = parseTable(files.sources, texts.sources, SOURCE_COLUMNS, sourceSchema);
  const actives = parseTable(files.actives, texts.actives, ACTIVE_COLUMNS, activeSchema);
  const crops = parseTable(files.crops, texts.crops, CROP_COLUMNS, cropSchema);
  const intervals = parseTable(files.intervals, texts.intervals, INTERVAL_COLUMNS, intervalRowSchema);

  refuseRepeats(files.sources, 'id', sources, ({ id }) => [id]);
  refuseRepeats(files.actives, 'iso_name', actives, ({ isoName, aliases }) => [isoName, ...aliases]);
  refuseRepeats(files.crops, 'name', crops, ({ name, aliases }) => [name, ...aliases]);
  refuseRepeats(files.intervals, 'row_id', intervals, ({ rowId }) => [String(rowId)]);

  const sourceIds = new Set(sources.map(({ record }) => record.id));
  for (const { line, record } of actives) {
    for (const [name, provenance] of Object.entries(record.provenance)) {
      if (provenance === null) continue;
      const column = ACTIVE_COLUMNS.find(({ path }) => path === `provenance.${name}.sources`)?.column ?? name;
      refuseUnknown(files.actives, line, column, provenance.sources, sourceIds, files.sources);
    }
  }
  for (const { line, record } of crops) {
    const { sources: cited }: Provenance = record.sensitivityProvenance;
    refuseUnknown(files.crops, line, 'sensitivity_sources', cited, sourceIds, files.sources);
  }
  const activeNames = new Set(actives.map(({ record }) => record.isoName));
  const cropNames = new Set(crops.map(({ record }) => record.name));
  for (const { line, record } of intervals) {
    refuseUnknown(files.intervals, line, 'active', [record.active], activeNames, files.actives);
    refuseUnknown(files.intervals, line, 'crop', [record.crop], cropNames, files.crops);
    refuseUnknown(files.intervals, line, 'source', [record.source], sourceIds, files.sources);
  }

  const records = <T>(rows: readonly TableRow<T>[]) => rows.map(({ record }) => record);
  return {
    actives: records(actives),
    crops: records(crops),
    intervals: records(intervals),
    sources: records(sources),
  };
}

function refuseRepeats<T>(
  file: string,
  column: string,
  rows: readonly TableRow<T>[],
  namesOf: (record: T) => readonly string[],
): void {
  const lines = new Map<string, number>();
  for (const { line, record } of rows) {
    for (const name of namesOf(record)) {
      const earlier = lines.get(spellingOf(name));
      if (earlier !== undefined) {
        throw catalogueFault(file, line, column, `"${name}" stands on line ${earlier} already`);
      }
      lines.set(spellingOf(name), line);
    }
  }
}

function refuseUnknown(
  file: string,
  line: number,
  column: string,
  names: readonly string[],
  known: ReadonlySet<string>,
  knownFile: string,
): void {
  const unknown = names.find((name) => !known.has(name));
  if (unknown !== undefined) throw catalogueFault(file, line, column, `"${unknown}" is not in ${knownFile}`);
}
