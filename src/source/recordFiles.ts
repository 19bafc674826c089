import { readdir, stat } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { MissingDataError, SourceFailedError } from '../errors.ts';
import type { ReadOptions } from '../schema/readOptions.ts';
import type { Station, StationRecord } from '../schema/weather.ts';
import { RecordBuilder } from './recordBuilder.ts';
import { isStationList, parseStationList } from './stationList.ts';
import { layoutOf, readUnpacked } from './weatherFile.ts';

const RECORD_NAME = /\.(dly|csv)(\.gz)?$/i;

/** One file that may hold daily records. */
export interface RecordFile {
  readonly path: string;
  /** Its name without the folder, as messages give it. */
  readonly name: string;
  /** True where a folder was named, not the file itself: a layout we do not read is then passed over. */
  readonly fromFolder: boolean;
  /** Adds the file's values, or one station's alone, to a builder; throws as RecordLayout.read does. */
  readInto(builder: RecordBuilder, onlyStation?: string): Promise<void>;
  /** All records of the file, with names and positions from the station list, else from the file itself. */
  records(): Promise<StationRecord[]>;
}

/** What a list of paths comes to. */
export interface RecordFiles {
  readonly files: readonly RecordFile[];
  /** Names and positions of these ids, from the station lists among the paths. */
  describe(ids: readonly string[]): Promise<Map<string, Station>>;
}

/**
 * The record files and station lists behind paths to files and folders. Of a folder, the `.dly` and `.csv` files
 * directly inside it (plain or `.gz`) and a station list count. A file reached twice counts once.
 * @param options what the user says about files that do not say it themselves
 * @throws {SourceFailedError} FILE_NOT_FOUND
 * @throws {MissingDataError} RECORDS_NONE where no path leads to a record file
 */
export async function findRecordFiles(
  paths: readonly string[],
  options: ReadOptions = {},
): Promise<RecordFiles> {
  const found = new Map<string, boolean>();
  const lists = new Set<string>();
  for (const given of paths) {
    const path = resolve(given);
    const isFolder = await isFolderAt(path, given);
    const members = isFolder ? (await readdir(path)).sort().map((name) => join(path, name)) : [path];
    for (const member of members) {
      if (isStationList(basename(member))) lists.add(member);
      else if (!isFolder) found.set(member, false);
      else if (RECORD_NAME.test(member) && !found.has(member)) found.set(member, true);
    }
  }
  if (found.size === 0) {
    throw new MissingDataError(
      'RECORDS_NONE',
      `No weather record was found at ${paths.join(', ') || 'no path'}.`,
      {
        hint: 'Name record files, or folders that hold files ending in .dly, .csv, .dly.gz or .csv.gz.',
      },
    );
  }
  const describe = describeFrom(lists);
  const files = [...found].map(([path, fromFolder]) => recordFile(path, fromFolder, describe, options));
  return { files, describe };
}

async function isFolderAt(path: string, given: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory();
  } catch (cause) {
    throw new SourceFailedError('FILE_NOT_FOUND', `There is no file or folder "${given}".`, {
      hint: 'Check the path; it is taken from the folder in which the command runs.',
      cause,
    });
  }
}

/** Looks stations up in the lists, each of which is unpacked once. */
function describeFrom(paths: ReadonlySet<string>): RecordFiles['describe'] {
  const unpacked = new Map<string, Promise<Buffer>>();
  const bytesOf = (path: string): Promise<Buffer> => {
    const bytes = unpacked.get(path) ?? readUnpacked(path);
    unpacked.set(path, bytes);
    return bytes;
  };
  return async (ids) => {
    const stations = new Map<string, Station>();
    for (const path of paths) {
      const listed = parseStationList(await bytesOf(path), basename(path), new Set(ids));
      for (const [id, station] of listed) stations.set(id, station);
    }
    return stations;
  };
}

function recordFile(
  path: string,
  fromFolder: boolean,
  describe: RecordFiles['describe'],
  options: ReadOptions,
): RecordFile {
  const name = basename(path);
  const readInto = async (builder: RecordBuilder, onlyStation?: string): Promise<void> => {
    const bytes = await readUnpacked(path);
    builder.openFile(name, bytes.length);
    layoutOf(bytes, name).read(bytes, name, builder, { ...options, onlyStation });
  };
  const records = async (): Promise<StationRecord[]> => {
    const builder = new RecordBuilder();
    await readInto(builder);
    const listed = await describe(builder.ids());
    return [...builder.records((id) => listed.get(id) ?? null)];
  };
  return { path, name, fromFolder, readInto, records };
}
