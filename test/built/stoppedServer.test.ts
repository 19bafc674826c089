import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { importEventSchema } from '../../src/schema/importEvents.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';
import { tickingClock } from '../store/openFields.ts';
import { writeYears } from '../store/yearFiles.ts';
import { tempFolder } from '../tempFolder.ts';
import { startBuilt } from './builtProgram.ts';

const STATIONS = Array.from({ length: 500 }, (_, at) => `TST0000${1000 + at}`);
const CHANGES = 20;

it('a server that is stopped at work ends what it does or takes it back, says which, and leaves nothing half done', async () => {
  const folder = tempFolder();
  const [file] = writeYears(tempFolder(), [1961], STATIONS);
  const server = await startBuilt(folder);
  const ask = (path: string, init: RequestInit) => fetch(server.address + path, init);

  const sent = await ask('api/weather/import?name=1961.csv', {
    method: 'POST',
    headers: { 'content-type': 'application/octet-stream' },
    body: readFileSync(file),
  });
  const reader = sent.body?.pipeThrough(new TextDecoderStream()).getReader();
  let told = (await reader?.read())?.value ?? '';
  const changes = Array.from({ length: CHANGES }, (_, at) =>
    ask(`api/fields/field-${at}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-none-match': '*' },
      body: JSON.stringify(fieldOf({ id: `field-${at}` })),
    }).then(
      ({ ok }) => (ok ? `field-${at}` : null),
      () => null,
    ),
  );
  const ended = server.stop();
  for (let next = await reader?.read(); next?.done === false; next = await reader?.read()) told += next.value;
  expect(await ended).toBe(0);

  const [last] = told
    .trimEnd()
    .split('\n')
    .map((line) => importEventSchema.parse(JSON.parse(line)))
    .slice(-1);
  const weather = await openWeatherStore(folder, { mode: 'read' });
  const stations = (await weather.stations()).length;
  await weather.close();
  const isStopped = last.step === 'done' && last.summary.stopped;
  expect([last.step, stations]).toEqual(['done', isStopped ? 0 : STATIONS.length]);
  expect(readdirSync(join(folder, 'received')).filter((name) => name.startsWith('file-'))).toEqual([]);

  const acknowledged = (await Promise.all(changes)).filter((id) => id !== null);
  const store = await openFieldsStore(folder, { now: tickingClock() });
  const kept = (await store.fields.list()).kept;
  await store.close();
  expect(kept.map(({ record }) => record.id)).toEqual(expect.arrayContaining(acknowledged));
  for (const { record } of kept) expect(record).toEqual(fieldOf({ id: record.id }));
});
