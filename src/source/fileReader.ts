import { DrywakeError, MissingDataError } from '../errors.ts';
import type { ReadOptions } from '../schema/readOptions.ts';
import type { StationExtent, StationRecord } from '../schema/weather.ts';
import { nearestIds } from './nearestIds.ts';
import { RecordBuilder } from './recordBuilder.ts';
import { findRecordFiles, type RecordFile, type RecordFiles } from './recordFiles.ts';
import { stationExtent } from './stationExtent.ts';
import { LAYOUT_UNKNOWN } from './weatherFile.ts';

/** Reads records straight from files; has the shape of the app's WeatherReader. */
export interface FileReader {
  /** All stations of the files, by id. Reads every file whole. */
  stations(): Promise<readonly StationExtent[]>;
  /**
   * The raw record of one station. Files named after the station are read alone where there are any; otherwise all
   * files are, other stations' lines passed over. Two files of one name but different endings are taken as the same
   * record in two layouts, and the fixed-width one is read.
   * @throws {MissingDataError} STATION_UNKNOWN, STATION_EMPTY, RECORDS_NONE
   * @throws {SourceFailedError} FILE_NOT_FOUND, FILE_DAMAGED, FILE_EMPTY, FILE_TOO_LARGE, FILE_LAYOUT_UNKNOWN
   * @throws {InvalidInputError} where a file leaves a question that only the user can answer; see RecordLayout
   */
  record(stationId: string): Promise<StationRecord>;
}

/**
 * A reader over files and folders; nothing is opened before the first question, so it is questions that are refused
 * (MissingDataError, SourceFailedError, InvalidInputError as `FileReader.record` says).
 * @example (await createFileReader([recordFile]).stations())[0].id // 'TST00000001'
 * @param options what the user says about files that do not say it themselves: units, order of dates, station id
 */
export function createFileReader(paths: readonly string[], options: ReadOptions = {}): FileReader {
  let found: Promise<RecordFiles> | undefined;
  const find = () => {
    found ??= findRecordFiles(paths, options);
    return found;
  };
  return {
    async stations() {
      const all = await find();
      return (await allRecords(all)).map(stationExtent).sort((a, b) => (a.id < b.id ? -1 : 1));
    },
    async record(stationId) {
      const all = await find();
      const named = all.files.filter((file) => file.name.startsWith(stationId));
      const record =
        (await recordIn(named, stationId, all)) ??
        (await recordIn(
          all.files.filter((file) => !named.includes(file)),
          stationId,
          all,
        ));
      if (record === null) throw await unknownStation(stationId, all);
      return record;
    },
  };
}

async function recordIn(
  files: readonly RecordFile[],
  stationId: string,
  all: RecordFiles,
): Promise<StationRecord | null> {
  const builder = await readAll(oneLayoutEach(files), stationId);
  if (!builder.ids().includes(stationId)) return null;
  const listed = await all.describe([stationId]);
  const [record] = builder.records((id) => listed.get(id) ?? null);
  if (record !== undefined) return record;
  throw new MissingDataError(
    'STATION_EMPTY',
    `Station ${stationId} holds no accepted rain or temperature value.`,
    {
      hint: 'Choose a station with daily rain and temperatures.',
    },
  );
}

/** Every station's record, the same that asking for it alone gives. */
async function allRecords(all: RecordFiles): Promise<StationRecord[]> {
  const builder = await readAll(oneLayoutEach(all.files));
  const listed = await all.describe(builder.ids());
  const records: StationRecord[] = [];
  for (const record of builder.records((id) => listed.get(id) ?? null)) {
    const { id } = record.station;
    const named = all.files.filter((file) => file.name.startsWith(id));
    const otherFilesToo = record.source.split('; ').some((name) => !name.startsWith(id));
    const alone = named.length > 0 && otherFilesToo ? await recordIn(named, id, all) : null;
    records.push(alone ?? record);
  }
  return records;
}

async function readAll(files: readonly RecordFile[], onlyStation?: string): Promise<RecordBuilder> {
  const builder = new RecordBuilder();
  for (const file of files) {
    try {
      await file.readInto(builder, onlyStation);
    } catch (error) {
      const passOver = file.fromFolder && error instanceof DrywakeError && error.code === LAYOUT_UNKNOWN;
      if (!passOver) throw error;
    }
  }
  return builder;
}

/** One file of each name without endings, the fixed-width one where there is a choice. */
function oneLayoutEach(files: readonly RecordFile[]): RecordFile[] {
  const stem = (file: RecordFile) => file.path.replace(/\.gz$/i, '').replace(/\.(dly|csv)$/i, '');
  const isDly = (file: RecordFile) => /\.dly(\.gz)?$/i.test(file.name);
  const seen = new Set<string>();
  const quickestFirst = [...files].sort((a, b) => Number(isDly(b)) - Number(isDly(a)));
  return quickestFirst.filter((file) => {
    if (seen.has(stem(file))) return false;
    seen.add(stem(file));
    return true;
  });
}

async function unknownStation(stationId: string, all: RecordFiles): Promise<MissingDataError> {
  const ids = (await allRecords(all)).map((record) => record.station.id);
  const nearest = nearestIds(stationId, ids);
  const listed = ids.length > nearest.length ? `The nearest of ${ids.length} ids` : 'The ids there are';
  return new MissingDataError('STATION_UNKNOWN', `No file holds a station with the id "${stationId}".`, {
    hint: nearest.length === 0 ? 'The files hold no station.' : `${listed}: ${nearest.join(', ')}.`,
    details: { stationId, nearest },
  });
}
