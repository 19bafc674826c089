import { DrywakeError, InvalidInputError } from '../errors.ts';
import type { FetchedRecord, FetchSummary } from '../schema/fetchSummary.ts';
import type { ImportedFile } from '../schema/importSummary.ts';
import type { StationWish } from '../schema/stationWish.ts';
import type { FetchedFile, RecordsService } from '../source/service/recordsService.ts';
import { type ImportInput, type ImportTarget, importWeather } from './importWeather.ts';

/** What is to be fetched. */
export interface FetchRequest {
  /** Station ids. */
  readonly ids: readonly string[];
  /** Years of which every station's record is wanted. */
  readonly years: readonly number[];
  /** Stations to be chosen by the service's lists; null for none. */
  readonly wish: StationWish | null;
  /** Most stations that a wish may select. */
  readonly mostStations: number;
  /** Only say what would be fetched. */
  readonly selectOnly: boolean;
}

/** Where records come from and go to. */
export interface FetchDeps {
  readonly service: RecordsService;
  /** The readable files behind paths. */
  weatherFiles(paths: readonly string[]): Promise<ImportInput>;
  /** The store, held for writing only while these files are imported. */
  importStore(files: readonly string[]): Promise<ImportTarget & { close(): Promise<void> }>;
}

/** How a fetch may be watched and stopped. */
export interface FetchWatch {
  readonly signal?: AbortSignal;
  /** Told once what is going to be fetched. */
  onWanted?(wanted: readonly string[]): void;
  /** Told of every piece that arrives. [B] */
  onBytes?(bytes: number): void;
  /** Told of every file that has been dealt with. */
  onFile?(file: FetchedRecord, done: number): void;
}

/**
 * Fetches records from the public service and imports each as soon as it is whole, in a transaction of its own. One
 * that fails is reported and the others go on; what is finished when the user stops stays.
 * @throws {InvalidInputError} NOTHING_TO_FETCH, SELECTION_TOO_LARGE
 * @throws {MissingDataError} STATION_UNKNOWN, STATE_UNKNOWN, SELECTION_EMPTY
 * @throws {ConflictError} FETCH_RUNNING where another fetch into the same folder is running
 * @throws {SourceFailedError} whatever keeps the lists from being fetched
 */
export async function fetchWeather(
  request: FetchRequest,
  deps: FetchDeps,
  watch: FetchWatch = {},
): Promise<FetchSummary> {
  const giveBack = await deps.service.hold();
  try {
    return await fetchHeld(request, deps, watch);
  } finally {
    await giveBack();
  }
}

async function fetchHeld(request: FetchRequest, deps: FetchDeps, watch: FetchWatch): Promise<FetchSummary> {
  const { service } = deps;
  const ids = await wantedIds(request, service, watch);
  const wanted = [...ids, ...request.years.map(String)];
  watch.onWanted?.(wanted);
  const files: FetchedRecord[] = [];
  const note = (file: FetchedRecord) => {
    files.push(file);
    watch.onFile?.(file, files.length);
  };
  if (!request.selectOnly) {
    const stationList = await service.stationList(watch);
    let ready: FetchedFile[] = [];
    for await (const batch of service.fetch({ ids, years: request.years }, watch)) {
      for (const file of batch) {
        if (file.problem === null) ready.push(file);
        else note({ title: file.title, outcome: 'failed', problem: wordsOf(file.problem), imported: null });
      }
      ready = await importReady(ready, stationList, deps, watch.signal, note);
    }
    await importReady(ready, stationList, deps, watch.signal, note, true);
  }
  const isImported = ({ imported }: FetchedRecord) =>
    imported?.outcome === 'imported' || imported?.outcome === 'unchanged';
  const count = (is: (file: FetchedRecord) => boolean) => files.filter(is).length;
  return {
    address: service.address,
    wanted,
    fetched: count(({ outcome }) => outcome === 'fetched'),
    unchanged: count(({ outcome }) => outcome === 'unchanged'),
    imported: count(isImported),
    failed: count((file) => !isImported(file)),
    stopped: watch.signal?.aborted ?? false,
    files,
  };
}

async function wantedIds(
  request: FetchRequest,
  service: RecordsService,
  watch: FetchWatch,
): Promise<string[]> {
  const { wish, mostStations } = request;
  const named = [...new Set(request.ids)];
  if (named.length === 0 && request.years.length === 0 && wish === null) {
    throw new InvalidInputError('NOTHING_TO_FETCH', 'Nothing was named to fetch.', {
      hint: 'Name station ids, or a place such as --state MT or --box 45,-112,46,-110.',
    });
  }
  if (named.length > 0) await service.checkIds(named, watch);
  const selected = wish === null ? [] : await service.select(wish, watch);
  if (selected.length > mostStations) {
    throw new InvalidInputError(
      'SELECTION_TOO_LARGE',
      `${selected.length} stations were selected; at most ${mostStations} are fetched at a time.`,
      {
        hint: 'Narrow it with --with, --since or --box, or raise the limit with --most.',
        details: { selected: selected.length, mostStations },
      },
    );
  }
  return [...new Set([...named, ...selected])];
}

/**
 * Imports files that have been fetched, those left out that the store holds as they are. Gives back those that have to
 * wait because another process holds the store; the last time they count as failed.
 */
async function importReady(
  ready: FetchedFile[],
  stationList: string,
  { weatherFiles, importStore }: FetchDeps,
  signal: AbortSignal | undefined,
  note: (file: FetchedRecord) => void,
  isLast = false,
): Promise<FetchedFile[]> {
  if (ready.length === 0) return [];
  const outcomeOf = ({ unchanged }: FetchedFile) => (unchanged ? 'unchanged' : 'fetched');
  try {
    const store = await importStore(ready.flatMap(({ path }) => path ?? []));
    try {
      for (const file of ready) {
        const { title, path } = file;
        const input = await weatherFiles([path ?? '', stationList]);
        const summary = await importWeather(input, store, { signal, passOverUnchanged: true });
        if (summary.stopped) break;
        note({ title, outcome: outcomeOf(file), problem: null, imported: summary.files[0] ?? null });
      }
    } finally {
      await store.close();
    }
  } catch (error) {
    if (!(error instanceof DrywakeError) || error.code !== 'STORE_BUSY') throw error;
    if (!isLast) return ready;
    for (const file of ready) {
      const imported = notImported(file.title, error);
      note({ title: file.title, outcome: outcomeOf(file), problem: null, imported });
    }
  }
  return [];
}

const wordsOf = ({ code, message, hint }: DrywakeError) => ({ code, message, hint });

const notImported = (source: string, error: DrywakeError): ImportedFile => ({
  source,
  outcome: 'failed',
  stations: [],
  problem: wordsOf(error),
});
