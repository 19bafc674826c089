import { cpSync, mkdirSync, readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { restoreBackup } from '../../src/app/restoreBackup.ts';
import type { Backup } from '../../src/schema/backup.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { keepFile } from '../../src/store/keepFile.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';

// A program of its own that works until it is killed, and says of each piece when it begins and when it is done:
// killedChild.ts restore FOLDER BACKUP BACKUP | killedChild.ts migrate FOLDER TEMPLATE
const [kind, folder, ...given] = process.argv.slice(2);
const now = () => '2026-11-25T12:00:00.000Z';
const say = (words: string) => process.stdout.write(`${words}\n`);

async function restoreByTurns(): Promise<void> {
  const backups = given.map((path): Backup => JSON.parse(readFileSync(path, 'utf8')));
  const store = await openFieldsStore(folder, { now, waitMs: 5000 });
  const deps = {
    ...{ store, version: '0.1.0', now },
    keepFile: async (name: string, text: string) => keepFile(folder, name, text),
  };
  for (let turn = 0; ; turn++) {
    say(`begun ${turn}`);
    await restoreBackup(backups[turn % 2], deps);
    say(`done ${turn}`);
  }
}

async function migrateCopies(): Promise<void> {
  for (let turn = 0; ; turn++) {
    const copy = join(folder, `${turn}`);
    mkdirSync(`${copy}.part`);
    cpSync(given[0], `${copy}.part`, { recursive: true });
    renameSync(`${copy}.part`, copy);
    say(`begun ${turn}`);
    await (await openFieldsStore(copy, { now })).close();
    await (await openWeatherStore(copy, { mode: 'write' })).close();
    say(`done ${turn}`);
  }
}

await (kind === 'restore' ? restoreByTurns() : migrateCopies());
