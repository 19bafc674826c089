import { isoDateOf } from '../calendar.ts';
import { DrywakeError, MissingDataError, SourceFailedError } from '../errors.ts';
import type { ImportedFile, ImportSummary } from '../schema/importSummary.ts';
import type { StationRecord } from '../schema/weather.ts';
import type { RecordFile, RecordFiles } from '../source/recordFiles.ts';
import type { FileImport, ImportCount, WeatherStore } from '../store/weatherStore.ts';

/** Files to be read and imported, or records that are there already. */
export type ImportInput =
  | { readonly files: readonly RecordFile[]; readonly describe?: RecordFiles['describe'] }
  | { readonly records: readonly StationRecord[] };

/** Where records go; the weather store is one. */
export type ImportTarget = Pick<WeatherStore, 'importRecords' | 'importFile' | 'holds'>;

/** What keeps a store quick to read; the weather store is one. */
export type StoreUpkeep = Pick<WeatherStore, 'scatteredFiles' | 'compact'>;

/** How far an import has come. */
export interface ImportProgress {
  /** The file just dealt with. */
  readonly file: ImportedFile;
  /** Files dealt with, this one included. */
  readonly done: number;
  readonly total: number;
}

/** How far the file in hand has come. */
export interface PartProgress {
  readonly source: string;
  /** Share of the file's longest step that is done (0-1). */
  readonly fractionDone: number;
  /** Files dealt with before this one. */
  readonly done: number;
  readonly total: number;
}

/** More about an import. */
export interface ImportOptions {
  readonly onProgress?: (progress: ImportProgress) => void;
  readonly onPart?: (progress: PartProgress) => void;
  /** Ends the import: the file in hand is undone, those before stay. */
  readonly signal?: AbortSignal;
  /** Passes over files that were imported before and have not changed since; otherwise they are read again. */
  readonly passOverUnchanged?: boolean;
}

interface Item {
  readonly source: string;
  readonly mayPassOver: boolean;
  /** What to import it from: a file, or a record at hand. */
  readonly file: RecordFile | null;
  read(): Promise<readonly StationRecord[]>;
}

interface Watch {
  readonly signal?: AbortSignal;
  readonly onProgress: (fractionDone: number) => void;
}

/**
 * Imports records into the store, one file after the other. A file is imported whole or not at all; one that fails is
 * reported and the others go on. Files that the store can take in by itself are left to it.
 */
export async function importWeather(
  input: ImportInput,
  store: ImportTarget,
  { onProgress, onPart, signal, passOverUnchanged = false }: ImportOptions = {},
): Promise<ImportSummary> {
  const items = itemsOf(input);
  const describe = 'files' in input ? input.describe : undefined;
  const files: ImportedFile[] = [];
  for (const item of items) {
    const { source } = item;
    const before = { done: files.length, total: items.length };
    const watch = {
      signal,
      onProgress: (fractionDone: number) => onPart?.({ source, fractionDone, ...before }),
    };
    const file = await importItem(item, store, watch, passOverUnchanged, describe);
    if (file === null) return summaryOf(files, true);
    files.push(file);
    onProgress?.({ file, done: files.length, total: items.length });
  }
  return summaryOf(files, false);
}

function summaryOf(files: readonly ImportedFile[], stopped: boolean): ImportSummary {
  const count = (outcome: ImportedFile['outcome']) => files.filter((file) => file.outcome === outcome).length;
  return {
    imported: count('imported'),
    unchanged: count('unchanged'),
    failed: count('failed'),
    passedOver: count('passed-over'),
    stopped,
    files: [...files],
  };
}

function itemsOf(input: ImportInput): Item[] {
  if ('files' in input) {
    return input.files.map((file) => ({
      source: file.name,
      mayPassOver: file.fromFolder,
      file,
      read: () => file.records(),
    }));
  }
  return input.records.map((record) => ({
    source: record.source,
    mayPassOver: false,
    file: null,
    read: async () => [record],
  }));
}

/** What became of one file; null where the import was stopped. */
async function importItem(
  item: Item,
  store: ImportTarget,
  watch: Watch,
  passOverUnchanged: boolean,
  describe: RecordFiles['describe'] | undefined,
): Promise<ImportedFile | null> {
  const { source, file } = item;
  if (watch.signal?.aborted) return null;
  try {
    if (file !== null && passOverUnchanged && (await store.holds(file.path))) {
      return { source, outcome: 'unchanged', stations: [], problem: null };
    }
    const bulk = file === null ? null : await store.importFile(file.path, { ...watch, describe });
    const stations =
      bulk?.outcome === 'imported'
        ? bulk.stations.map(bulkStation)
        : await importRead(item, store, watch, bulk?.line ?? 0);
    return { source, outcome: 'imported', stations, problem: null };
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    const { code, message, hint } = error;
    if (code === 'IMPORT_STOPPED') return null;
    const outcome = item.mayPassOver && code === 'FILE_LAYOUT_UNKNOWN' ? 'passed-over' : 'failed';
    return { source, outcome, stations: [], problem: { code, message, hint } };
  }
}

/**
 * Imports what the record readers make of it.
 * @param brokenLine line at which the store gave up, 0 where unknown; told where the file is too large for the readers
 */
async function importRead(
  { source, file, read }: Item,
  store: ImportTarget,
  watch: Watch,
  brokenLine: number,
): Promise<ImportedFile['stations']> {
  const records = await read().catch((error: unknown) => {
    const tooLarge = error instanceof DrywakeError && error.code === 'FILE_TOO_LARGE';
    throw tooLarge && brokenLine > 0 ? brokenAt(source, brokenLine, error) : error;
  });
  if (records.length === 0) throw noValues(source);
  const counts = await store.importRecords(records, { ...watch, file: file?.path });
  return records.map((record, index) => importedStation(record, counts[index]));
}

type BulkStation = Extract<FileImport, { outcome: 'imported' }>['stations'][number];

function bulkStation({
  firstDay,
  lastDay,
  valuesRead,
  ...same
}: BulkStation): ImportedFile['stations'][number] {
  return {
    ...same,
    firstDate: isoDateOf(firstDay),
    lastDate: isoDateOf(lastDay),
    values: valuesRead,
    notes: [],
  };
}

function importedStation(record: StationRecord, count: ImportCount): ImportedFile['stations'][number] {
  const { station, firstDay, rainTenthsMm, reading } = record;
  return {
    stationId: station.id,
    firstDate: isoDateOf(firstDay),
    lastDate: isoDateOf(firstDay + rainTenthsMm.length - 1),
    values: reading.valuesRead,
    dropped: reading.droppedByFlag + reading.implausible,
    duplicated: reading.duplicated,
    notes: [...reading.notes],
    ...count,
  };
}

const brokenAt = (source: string, line: number, cause: unknown): SourceFailedError =>
  new SourceFailedError('FILE_DAMAGED', `${source}, line ${line}: the line breaks the layout of its file.`, {
    hint: 'Fetch the file again, or take it out of the folder.',
    details: { file: source, line },
    cause,
  });

const noValues = (source: string): MissingDataError =>
  new MissingDataError('STATION_EMPTY', `${source} holds no accepted rain or temperature value.`, {
    hint: 'Choose a file with daily rain and temperatures.',
    details: { source },
  });
