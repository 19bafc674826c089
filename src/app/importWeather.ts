import { isoDateOf } from '../calendar.ts';
import { DrywakeError, MissingDataError } from '../errors.ts';
import type { ImportedFile, ImportSummary } from '../schema/importSummary.ts';
import type { StationRecord } from '../schema/weather.ts';
import type { RecordFile } from '../source/recordFiles.ts';
import type { ImportCount, WeatherStore } from '../store/weatherStore.ts';

/** Files to be read and imported, or records that are there already. */
export type ImportInput =
  | { readonly files: readonly RecordFile[] }
  | { readonly records: readonly StationRecord[] };

/** Where records go; the weather store is one. */
export type ImportTarget = Pick<WeatherStore, 'importRecords'>;

/** How far an import has come. */
export interface ImportProgress {
  /** The file just dealt with. */
  readonly file: ImportedFile;
  /** Files dealt with, this one included. */
  readonly done: number;
  readonly total: number;
}

interface Item {
  readonly source: string;
  readonly mayPassOver: boolean;
  read(): Promise<readonly StationRecord[]>;
}

/**
 * Imports records into the store, one file after the other. A file is imported whole or not at all; one that fails is
 * reported and the others go on.
 */
export async function importWeather(
  input: ImportInput,
  store: ImportTarget,
  onProgress: (progress: ImportProgress) => void = () => undefined,
): Promise<ImportSummary> {
  const items = itemsOf(input);
  const files: ImportedFile[] = [];
  for (const item of items) {
    const file = await importItem(item, store);
    files.push(file);
    onProgress({ file, done: files.length, total: items.length });
  }
  const count = (outcome: ImportedFile['outcome']) => files.filter((file) => file.outcome === outcome).length;
  return { imported: count('imported'), failed: count('failed'), passedOver: count('passed-over'), files };
}

function itemsOf(input: ImportInput): Item[] {
  if ('files' in input) {
    return input.files.map((file) => ({
      source: file.name,
      mayPassOver: file.fromFolder,
      read: () => file.records(),
    }));
  }
  return input.records.map((record) => ({
    source: record.source,
    mayPassOver: false,
    read: async () => [record],
  }));
}

async function importItem(item: Item, store: ImportTarget): Promise<ImportedFile> {
  const { source } = item;
  try {
    const records = await item.read();
    if (records.length === 0) throw noValues(source);
    const counts = await store.importRecords(records);
    const stations = records.map((record, index) => importedStation(record, counts[index]));
    return { source, outcome: 'imported', stations, problem: null };
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    const passedOver = item.mayPassOver && error.code === 'FILE_LAYOUT_UNKNOWN';
    const { code, message, hint } = error;
    return {
      source,
      outcome: passedOver ? 'passed-over' : 'failed',
      stations: [],
      problem: { code, message, hint },
    };
  }
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
    ...count,
  };
}

const noValues = (source: string): MissingDataError =>
  new MissingDataError('STATION_EMPTY', `${source} holds no accepted rain or temperature value.`, {
    hint: 'Choose a file with daily rain and temperatures.',
    details: { source },
  });
