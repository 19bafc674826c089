import { existsSync, readFileSync } from 'node:fs';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type ClimateCache, createClimateCache } from '../app/climateCache.ts';
import { layeredReader } from '../app/layeredReader.ts';
import { rehearsal } from '../app/rehearsal.ts';
import { sharedSeasons } from '../app/sharedSeasons.ts';
import { createWeatherInbox } from '../app/weatherInbox.ts';
import type { WeatherReader } from '../app/weatherReader.ts';
import { loadCatalogue } from '../catalogue/loadCatalogue.ts';
import { readDataFolder } from '../catalogue/readDataFolder.ts';
import { demoFarm } from '../demo/demoFarm.ts';
import { demoQuestion } from '../demo/demoQuestion.ts';
import { createDemoReader } from '../demo/demoReader.ts';
import { InvalidInputError } from '../errors.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { County } from '../schema/place.ts';
import { createFileReader } from '../source/fileReader.ts';
import { writeTextFile } from '../source/writeTextFile.ts';
import type { CliDeps, Terminal } from './command.ts';
import {
  addressHere,
  type DeskOutside,
  keptFields,
  lazyLabels,
  openDesk,
  serviceOptionsIn,
  withDesk,
} from './realDesk.ts';

/** How long an import waits for readers, which hold the store for moments only. [ms] */
const WRITER_WAITS_MS = 5000;

/** Largest table, question or backup that is read whole. [bytes] */
const MOST_TEXT_BYTES = 128 * 1024 ** 2;

const textTooLarge = (path: string) =>
  new InvalidInputError('FILE_TOO_LARGE', `${path} is larger than ${MOST_TEXT_BYTES / 1024 ** 2} MiB.`, {
    hint: 'Split it into several files.',
  });

/** The catalogue, read when it is first asked for; its files come with the program and stay as they are. */
let loadedCatalogue: Catalogue | undefined;
let readCounties: Promise<readonly County[]> | undefined;

/** The program's own folder: where package.json and data/ stand, from the sources as from the built file. */
function programFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) folder = dirname(folder);
  return folder;
}

/** The store, where there is one, then the embedded demo. */
async function openReaders(storeFolder: string) {
  const { createServedStore } = await import('../store/servedStore.ts');
  const store = createServedStore(storeFolder);
  return { store, reader: layeredReader([store.reader, createDemoReader()]) };
}

type ServedStore = Awaited<ReturnType<typeof openReaders>>['store'];

/** Takes the files that a page sends into the store. */
async function openInbox(storeFolder: string, store: ServedStore) {
  const { createReceivedFiles } = await import('../source/receivedFiles.ts');
  const { findRecordFiles } = await import('../source/recordFiles.ts');
  return createWeatherInbox({
    ...createReceivedFiles(join(storeFolder, 'received')),
    weatherFiles: findRecordFiles,
    importStore: store.openToWrite,
  });
}

/** All US counties, read when they are first asked for. */
async function usCounties(): Promise<readonly County[]> {
  const { readUsCounties } = await import('../source/usCounties.ts');
  readCounties ??= readUsCounties();
  readCounties.catch(() => {
    readCounties = undefined;
  });
  return readCounties;
}

/** A cache that forgets its climates when the store's file has changed. */
function freshCache(weather: WeatherReader, changed: () => Promise<boolean>): ClimateCache {
  const cache = createClimateCache(weather);
  return {
    clear: cache.clear,
    async of(question) {
      if (await changed()) cache.clear();
      return cache.of(question);
    },
  };
}

const clock = () => new Date().toISOString();

/**
 * Everything outside: files, store, catalogue, server.
 * @param storeFolder where the store lives
 * @param stopped resolves when the server is to end
 */
export function realDeps(terminal: Terminal, storeFolder: string, stopped: () => Promise<void>): CliDeps {
  const home = programFolder();
  const version: string = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8')).version;
  const catalogue = () => (loadedCatalogue ??= loadCatalogue(readDataFolder(join(home, 'data'))));
  const outside = async (): Promise<DeskOutside> => {
    const { store, reader } = await openReaders(storeFolder);
    const climates = freshCache(reader, store.reader.changed);
    return { storeFolder, version, store, reader, answer: { version, catalogue: catalogue(), climates } };
  };
  return {
    terminal,
    version,
    async readText(path) {
      try {
        const { size } = await stat(path);
        if (size > MOST_TEXT_BYTES) throw textTooLarge(path);
        return await readFile(path, 'utf8');
      } catch (cause) {
        if (cause instanceof InvalidInputError) throw cause;
        throw new InvalidInputError('FILE_NOT_FOUND', `The file ${path} cannot be read.`, {
          hint: 'Check its name and that you may read it.',
          cause,
        });
      }
    },
    async writeNewText(path, text) {
      try {
        await writeFile(path, text, { flag: 'wx' });
      } catch (cause) {
        const exists = (cause as NodeJS.ErrnoException).code === 'EEXIST';
        throw new InvalidInputError(
          'FILE_NOT_WRITTEN',
          `The file ${path} ${exists ? 'is there already; it was left as it is' : 'cannot be written'}.`,
          { hint: 'Name a new file in a folder that you may write.', cause },
        );
      }
    },
    fileReader: createFileReader,
    storedReader: async () => (await openReaders(storeFolder)).reader,
    async importStore(files) {
      const { openWeatherStore } = await import('../store/weatherStore.ts');
      return openWeatherStore(storeFolder, { mode: 'write', files, waitMs: WRITER_WAITS_MS });
    },
    async weatherFiles(paths, options) {
      const { findRecordFiles } = await import('../source/recordFiles.ts');
      return findRecordFiles(paths, options);
    },
    async exampleRecords() {
      const { readExampleRecords } = await import('../source/exampleRecords.ts');
      return { records: await readExampleRecords() };
    },
    async recordsService(options) {
      const { createRecordsService } = await import('../source/service/recordsService.ts');
      return createRecordsService({ ...serviceOptionsIn(storeFolder, version), ...options });
    },
    async untilInterrupted(work) {
      const stop = new AbortController();
      const onInterrupt = () => stop.abort();
      process.once('SIGINT', onInterrupt);
      try {
        return await work(stop.signal);
      } finally {
        process.off('SIGINT', onInterrupt);
      }
    },
    async workshop(workers) {
      const { openWorkshop } = await import('../worker/openWorkshop.ts');
      return openWorkshop(catalogue(), workers);
    },
    writeText: writeTextFile,
    async writeParquet(path, columns, rows) {
      const { writeParquet } = await import('../store/writeParquet.ts');
      return writeParquet(path, columns, rows);
    },
    async exportWeather(folder, stationIds) {
      const { exportWeather } = await import('../store/exportWeather.ts');
      return exportWeather(storeFolder, folder, stationIds);
    },
    async stateOf() {
      const { readUsStates } = await import('../source/usStateOf.ts');
      return readUsStates();
    },
    now: () => performance.now(),
    clock,
    counties: usCounties,
    catalogue,
    answerDeps: (weather) => ({
      version,
      catalogue: catalogue(),
      climates: createClimateCache(weather),
      labels: lazyLabels(outside, storeFolder),
    }),
    keptFields: () => keptFields(outside, storeFolder),
    withDesk: async (work) => withDesk(await outside(), work),
    async serve({ logRequests, ...options }) {
      const { startServer } = await import('../http/serve.ts');
      const { guardFor } = await import('../http/guard/guardFor.ts');
      const { tellServedBy, untellServedBy } = await import('../store/servedBy.ts');
      const { guard, addresses } = await guardFor(options.host, storeFolder, process.env.DRYWAKE_TOKEN);
      const around = await outside();
      const { store, reader, answer } = around;
      const { desk, labels, close } = await openDesk(around);
      const inbox = await openInbox(storeFolder, store);
      const { openWorkshop } = await import('../worker/openWorkshop.ts');
      const { readUsStates } = await import('../source/usStateOf.ts');
      const workshop = openWorkshop(catalogue());
      const seasons = sharedSeasons();
      const pageFolder = join(home, 'dist', 'web');
      const server = await startServer(
        {
          ...answer,
          labels,
          seasons,
          weather: reader,
          inbox,
          desk,
          workshop,
          stateOf: readUsStates,
          clock,
          counties: usCounties,
          example: { question: demoQuestion, farm: demoFarm },
          pageFolder: existsSync(pageFolder) ? pageFolder : null,
          log: (line) => terminal.err(`${line}\n`),
          logRequests,
          guard,
        },
        { ...options, whileIdle: rehearsal(demoQuestion, { ...answer, labels, seasons }, desk) },
      ).catch(async (error: unknown) => {
        await close();
        throw error;
      });
      tellServedBy(storeFolder, {
        address: addressHere(options.host, server.port),
        process: process.pid,
        token: guard.token,
      });
      const lines = addresses(server.port).map((address) => `Drywake ${version} is at ${address}\n`);
      terminal.out(`${lines.join('')}Stop it with Ctrl-C.\n`);
      await stopped();
      inbox.stop();
      await server.close();
      untellServedBy(storeFolder);
      await close();
      await workshop.close();
    },
  };
}
