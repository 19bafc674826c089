import { existsSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type ClimateCache, createClimateCache } from '../app/climateCache.ts';
import { layeredReader } from '../app/layeredReader.ts';
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

/** How long an import waits for readers, which hold the store for moments only. [ms] */
const WRITER_WAITS_MS = 5000;

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

/**
 * Everything outside: files, store, catalogue, server.
 * @param storeFolder where the store lives
 * @param stopped resolves when the server is to end
 */
export function realDeps(terminal: Terminal, storeFolder: string, stopped: () => Promise<void>): CliDeps {
  const home = programFolder();
  const version: string = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8')).version;
  const catalogue = () => (loadedCatalogue ??= loadCatalogue(readDataFolder(join(home, 'data'))));
  return {
    terminal,
    version,
    async readText(path) {
      try {
        return await readFile(path, 'utf8');
      } catch (cause) {
        throw new InvalidInputError('FILE_NOT_FOUND', `The file ${path} cannot be read.`, {
          hint: 'Check its name and that you may read it.',
          cause,
        });
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
      return createRecordsService({
        folder: join(storeFolder, 'records'),
        agent: `drywake/${version}`,
        ...(process.env.DRYWAKE_RECORDS && { address: process.env.DRYWAKE_RECORDS }),
        ...options,
      });
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
      return openWorkshop(join(home, 'data'), workers);
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
    counties: usCounties,
    catalogue,
    answerDeps: (weather) => ({ version, catalogue: catalogue(), climates: createClimateCache(weather) }),
    async serve({ logRequests, ...options }) {
      const { startServer } = await import('../http/serve.ts');
      const { guardFor } = await import('../http/guard/guardFor.ts');
      const { guard, addresses } = await guardFor(options.host, storeFolder, process.env.DRYWAKE_TOKEN);
      const { store, reader } = await openReaders(storeFolder);
      const inbox = await openInbox(storeFolder, store);
      const { openWorkshop } = await import('../worker/openWorkshop.ts');
      const { readUsStates } = await import('../source/usStateOf.ts');
      const workshop = openWorkshop(join(home, 'data'));
      const pageFolder = join(home, 'dist', 'web');
      const server = await startServer(
        {
          version,
          catalogue: catalogue(),
          climates: freshCache(reader, store.reader.changed),
          weather: reader,
          inbox,
          workshop,
          stateOf: readUsStates,
          counties: usCounties,
          example: { question: demoQuestion, farm: demoFarm },
          pageFolder: existsSync(pageFolder) ? pageFolder : null,
          log: (line) => terminal.err(`${line}\n`),
          logRequests,
          guard,
        },
        options,
      );
      const lines = addresses(server.port).map((address) => `Drywake ${version} is at ${address}\n`);
      terminal.out(`${lines.join('')}Stop it with Ctrl-C.\n`);
      await stopped();
      inbox.stop();
      await server.close();
      await workshop.close();
    },
  };
}
