import { existsSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type ClimateCache, createClimateCache } from '../app/climateCache.ts';
import { layeredReader } from '../app/layeredReader.ts';
import type { WeatherReader } from '../app/weatherReader.ts';
import { loadCatalogue } from '../catalogue/loadCatalogue.ts';
import { readDataFolder } from '../catalogue/readDataFolder.ts';
import { demoFarm } from '../demo/demoFarm.ts';
import { demoQuestion } from '../demo/demoQuestion.ts';
import { createDemoReader } from '../demo/demoReader.ts';
import { InvalidInputError } from '../errors.ts';
import { createFileReader } from '../source/fileReader.ts';
import type { CliDeps, Terminal } from './command.ts';

/** The program's own folder: where package.json and data/ stand, from the sources as from the built file. */
function programFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) folder = dirname(folder);
  return folder;
}

/** The store, where there is one, then the embedded demo. */
async function openReaders(storeFolder: string) {
  const { createBriefReader } = await import('../store/briefReader.ts');
  const store = createBriefReader(storeFolder);
  return { store, reader: layeredReader([store, createDemoReader()]) };
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
  const catalogue = () => loadCatalogue(readDataFolder(join(home, 'data')));
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
    async importStore() {
      const { openWeatherStore } = await import('../store/weatherStore.ts');
      return openWeatherStore(storeFolder, { mode: 'write' });
    },
    async weatherFiles(paths) {
      const { findRecordFiles } = await import('../source/recordFiles.ts');
      return { files: (await findRecordFiles(paths)).files };
    },
    async exampleRecords() {
      const { readExampleRecords } = await import('../source/exampleRecords.ts');
      return { records: await readExampleRecords() };
    },
    answerDeps: (weather) => ({ version, catalogue: catalogue(), climates: createClimateCache(weather) }),
    async serve(options) {
      const { startServer } = await import('../http/serve.ts');
      const { store, reader } = await openReaders(storeFolder);
      const pageFolder = join(home, 'dist', 'web');
      const server = await startServer(
        {
          version,
          catalogue: catalogue(),
          climates: freshCache(reader, store.changed),
          weather: reader,
          example: { question: demoQuestion, farm: demoFarm },
          pageFolder: existsSync(pageFolder) ? pageFolder : null,
          log: (line) => terminal.err(`${line}\n`),
        },
        options,
      );
      terminal.out(`Drywake ${version} is at ${server.address}\nStop it with Ctrl-C.\n`);
      await stopped();
      await server.close();
    },
  };
}
