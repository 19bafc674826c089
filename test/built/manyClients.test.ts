import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { expect, it, onTestFinished } from 'vitest';
import { backupSchema } from '../../src/schema/backup.ts';
import { bundled } from '../bundled.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';
import { tempFolder } from '../tempFolder.ts';
import { startBuilt } from './builtProgram.ts';
import type { Acknowledged } from './editingClient.ts';

const run = promisify(execFile);
const PROCESSES = 5;
const CLIENTS_EACH = 10;
const CLIENTS = PROCESSES * CLIENTS_EACH;
const IDS = ['home-quarter', 'far-quarter'];

it('of fifty clients in five processes that edit the same two fields at once, none loses a change or waits for ever', async () => {
  const program = await bundled('test/built/editingClient.ts');
  const server = await startBuilt(tempFolder());
  onTestFinished(async () => void (await server.stop()));
  for (const id of IDS) {
    const made = await fetch(`${server.address}api/fields/${id}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-none-match': '*' },
      body: JSON.stringify(fieldOf({ id, note: '0' })),
    });
    expect(made.status).toBe(200);
  }

  const ran = await Promise.all(
    Array.from({ length: PROCESSES }, () =>
      run(process.execPath, [program, server.address, String(CLIENTS_EACH), ...IDS]),
    ),
  );

  const acknowledged: Acknowledged[] = ran.flatMap(({ stdout }) => JSON.parse(stdout));
  const { fields } = backupSchema.parse(await (await fetch(`${server.address}api/backup`)).json());
  for (const one of IDS) {
    const versions = Array.from({ length: CLIENTS }, (_, made) => made + 2);
    const told = acknowledged.filter(({ id }) => id === one).map(({ version }) => version);
    expect(told.toSorted((a, b) => a - b)).toEqual(versions);
    const kept = fields.filter(({ id }) => id === one);
    expect(kept.map(({ version, document }) => [version, document.note])).toEqual(
      [1, ...versions].map((version) => [version, String(version - 1)]),
    );
  }
});
