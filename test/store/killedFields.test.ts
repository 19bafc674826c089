import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { expect, it, onTestFinished } from 'vitest';
import { createRandomSource } from '../../src/demo/randomSource.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { tempFolder } from '../tempFolder.ts';
import { tickingClock } from './openFields.ts';

const projectRoot = fileURLToPath(new URL('../../', import.meta.url));
const script = fileURLToPath(new URL('fieldsChild.ts', import.meta.url));
const KILLS = 10;
const LONGEST_DELAY_MS = 500;

/** Another process that writes version after version until it is killed; gives the last that it said was kept. */
async function writeUntilKilled(folder: string, delayMs: number): Promise<number> {
  const child = spawn(process.execPath, ['--import', 'tsx', script, folder], {
    cwd: projectRoot,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(child, 'close');
  onTestFinished(() => void child.kill('SIGKILL'));
  let said = '';
  child.stdout.on('data', (text) => {
    said += text;
  });
  while (!/open\n\d+\n/.test(said)) await once(child.stdout, 'data');
  await pause(delayMs);
  child.kill('SIGKILL');
  await ended;
  return Number(said.split('\n').at(-2));
}

it('a program killed ten times while it writes has kept every version that it said was kept', async () => {
  const folder = tempFolder();
  const random = createRandomSource(20_261_125);
  for (let kill = 0; kill < KILLS; kill++) {
    const acknowledged = await writeUntilKilled(folder, random.uniform() * LONGEST_DELAY_MS);
    const store = await openFieldsStore(folder, { now: tickingClock() });
    const kept = await store.fields.get('home-quarter');
    const versions = (await store.everything()).fields.map(({ version, document }) => [
      version,
      document.note,
    ]);
    await store.close();
    // One more may have been kept and not yet said.
    expect([acknowledged, acknowledged + 1]).toContain(kept?.version);
    expect(versions).toEqual(
      Array.from({ length: kept?.version ?? 0 }, (_, index) => [index + 1, `note ${index + 1}`]),
    );
    expect(kept?.record.note).toBe(`note ${kept?.version}`);
  }
});
