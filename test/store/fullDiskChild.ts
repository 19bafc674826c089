import { readFileSync } from 'node:fs';
import { importWeather } from '../../src/app/importWeather.ts';
import { restoreBackup } from '../../src/app/restoreBackup.ts';
import { DrywakeError } from '../../src/errors.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { keepFile } from '../../src/store/keepFile.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';

// A program of its own that may write little, or nothing: fullDiskChild.ts write | restore | import FOLDER FILE… says
// as JSON what it was told when it could not write, and what it could read after that.
const [kind, folder, ...files] = process.argv.slice(2);
const now = () => '2026-11-25T12:00:00.000Z';
const gauge = Array.from({ length: 300 }, (_, day) => ({
  date: new Date(1.7e12 + day * 864e5).toISOString().slice(0, 10),
  mm: day + 0.123,
}));

interface Told {
  readonly code: string;
  readonly message: string;
  readonly hint: string;
}

const toldOf = (error: unknown): Told => {
  if (!(error instanceof DrywakeError)) throw error;
  const { code, message, hint } = error;
  return { code, message, hint };
};

/** Writes version after version until that fails, then looks at what is kept and tries once more. */
async function writeOn(): Promise<object> {
  const store = await openFieldsStore(folder, { now });
  let version = (await store.fields.get('home-quarter'))?.version ?? null;
  let told: Told | null = null;
  while (told === null) {
    const note = `note ${(version ?? 0) + 1}`;
    const put = await store.fields.put(fieldOf({ gauge, note }), version).catch(toldOf);
    if ('code' in put) told = put;
    else version = put.version;
  }
  const kept = await store.fields.get('home-quarter');
  await store.close();
  return { told, version, kept: kept?.version, note: kept?.record.note };
}

async function restore(): Promise<object> {
  const store = await openFieldsStore(folder, { now });
  const deps = {
    ...{ store, version: '0.1.0', now },
    keepFile: async (name: string, text: string) => keepFile(folder, name, text),
  };
  const told = await restoreBackup(JSON.parse(readFileSync(files[0], 'utf8')), deps).catch(toldOf);
  const kept = (await store.fields.list()).kept.map(({ record }) => record.id);
  await store.close();
  return { told, kept };
}

async function importAll(): Promise<object> {
  const store = await openWeatherStore(folder, { mode: 'write', files });
  const summary = await importWeather(await findRecordFiles(files), store);
  const stations = await store.stations();
  await store.close();
  return {
    told: summary.files.map(({ problem }) => problem),
    stations: stations.map(({ id, rainDays }) => [id, rainDays]),
  };
}

const work = { write: writeOn, restore, import: importAll }[kind] ?? writeOn;
const result = await work().catch((error: unknown) => ({ told: toldOf(error), opened: false }));
process.stdout.write(JSON.stringify(result));
