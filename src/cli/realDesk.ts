import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { AnswerDeps } from '../app/answerField.ts';
import { fetchWeather } from '../app/fetchWeather.ts';
import { createFieldsDesk, type FieldsDesk } from '../app/fieldsDesk.ts';
import { type LabelBook, labelBookOf } from '../app/labelBook.ts';
import type { WeatherReader } from '../app/weatherReader.ts';
import { ConflictError, DrywakeError } from '../errors.ts';
import type { FieldRecord } from '../schema/fieldRecord.ts';
import { keepFile } from '../store/keepFile.ts';
import type { ServedStore } from '../store/servedStore.ts';
import { createServerDesk } from './serverDesk.ts';

/** How long a command waits for another one that holds the fields. [ms] */
const COMMAND_WAITS_MS = 3000;

/** What stands around the fields. */
export interface DeskOutside {
  readonly storeFolder: string;
  readonly version: string;
  /** The weather store, and what is read through it. */
  readonly store: ServedStore;
  readonly reader: WeatherReader;
  /** What answering needs, but for the user's own label entries. */
  readonly answer: Omit<AnswerDeps, 'labels'>;
}

/** A desk that holds the fields' file until it is closed. */
export interface OpenDesk {
  readonly desk: FieldsDesk;
  readonly labels: LabelBook;
  close(): Promise<void>;
}

/**
 * Opens the fields of a data folder.
 * @throws {ConflictError} STORE_BUSY, saying who holds them and where that server's page is
 */
export async function openDesk(outside: DeskOutside, waitMs = 0): Promise<OpenDesk> {
  const { storeFolder, version, reader, answer } = outside;
  const { openFieldsStore } = await import('../store/fieldsStore.ts');
  const { readServedBy } = await import('../store/servedBy.ts');
  const now = () => new Date().toISOString();
  const store = await openFieldsStore(storeFolder, { now, waitMs }).catch((error: unknown) => {
    const served = isBusy(error) ? readServedBy(storeFolder, error.details.process) : null;
    if (!isBusy(error) || served === null) throw error;
    throw new ConflictError('STORE_BUSY', error.message, {
      hint: `A server holds it; its page is at ${served.address}. Use that one, stop it, or name another folder with DRYWAKE_HOME.`,
      details: error.details,
      cause: error,
    });
  });
  const labels = labelBookOf(store.labels);
  const desk = createFieldsDesk({
    store,
    version,
    now,
    answer: { ...answer, labels },
    weather: { stations: () => reader.stations(), fetch: fetcherOf(outside) },
    keepFile: async (name, text) => keepFile(storeFolder, name, text),
  });
  return { desk, labels, close: () => store.close() };
}

/** Fetches one station's record from the public service, whose client is made when it is first needed. */
function fetcherOf({ storeFolder, version, store }: DeskOutside) {
  let client: Promise<Parameters<typeof fetchWeather>[1]> | undefined;
  const make = async () => {
    const { createRecordsService } = await import('../source/service/recordsService.ts');
    const { findRecordFiles } = await import('../source/recordFiles.ts');
    const service = createRecordsService(serviceOptionsIn(storeFolder, version));
    return { service, weatherFiles: findRecordFiles, importStore: store.openToWrite };
  };
  return async (stationId: string) => {
    client ??= make();
    const request = { ids: [stationId], years: [], wish: null, mostStations: 1, selectOnly: false };
    return fetchWeather(request, await client);
  };
}

/** How the public records service is asked from a data folder. */
export const serviceOptionsIn = (storeFolder: string, version: string) => ({
  folder: join(storeFolder, 'records'),
  agent: `drywake/${version}`,
  ...(process.env.DRYWAKE_RECORDS && { address: process.env.DRYWAKE_RECORDS }),
});

/**
 * Does work on the fields of a data folder: with the file itself where no server holds it, else by asking that server.
 * @throws {ConflictError} STORE_BUSY where it is held by somebody who cannot be asked
 */
export async function withDesk<T>(outside: DeskOutside, work: (desk: FieldsDesk) => Promise<T>): Promise<T> {
  const { readServedBy } = await import('../store/servedBy.ts');
  const open = (waitMs: number) => openDesk(outside, waitMs);
  let opened: OpenDesk;
  try {
    opened = await open(0);
  } catch (error) {
    if (!isBusy(error)) throw error;
    const served = readServedBy(outside.storeFolder, error.details.process);
    if (served !== null) return work(createServerDesk(served));
    opened = await open(COMMAND_WAITS_MS);
  }
  try {
    return await work(opened.desk);
  } finally {
    await opened.close();
  }
}

/** Address under which programs of this computer reach a server that listens on `host`. */
export function addressHere(host: string | undefined, port: number): string {
  const name = host === undefined || host === '0.0.0.0' ? '127.0.0.1' : host === '::' ? '::1' : host;
  return `http://${name.includes(':') ? `[${name}]` : name}:${port}/`;
}

/** The fields of a data folder; none where it has none. */
export async function keptFields(
  outside: () => Promise<DeskOutside>,
  storeFolder: string,
): Promise<FieldRecord[]> {
  const { FIELDS_FILE } = await import('../store/fieldsStore.ts');
  if (!existsSync(join(storeFolder, FIELDS_FILE))) return [];
  const { kept } = await withDesk(await outside(), (desk) => desk.fields.list());
  return kept.map(({ record }) => record);
}

/** The user's own label entries, looked up when a question names one. */
export function lazyLabels(outside: () => Promise<DeskOutside>, storeFolder: string): LabelBook {
  const use = async <T>(none: T, work: (book: LabelBook) => Promise<T>): Promise<T> => {
    const { FIELDS_FILE } = await import('../store/fieldsStore.ts');
    if (!existsSync(join(storeFolder, FIELDS_FILE))) return none;
    return withDesk(await outside(), (desk) => work(labelBookOf(desk.labels)));
  };
  return {
    labels: () => use([], (book) => book.labels()),
    label: (id) => use(null, (book) => book.label(id)),
  };
}

const isBusy = (error: unknown): error is DrywakeError =>
  error instanceof DrywakeError && error.code === 'STORE_BUSY';
