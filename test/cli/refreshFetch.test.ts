import { HttpResponse, http } from 'msw';
import { expect, it, onTestFinished, vi } from 'vitest';
import { refreshSchema } from '../../src/schema/fieldAnswer.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';
import { ADDRESS, inventoryLine, recordGz, stationLine, useServer } from '../source/service/fakeService.ts';
import { tickingClock } from '../store/openFields.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const { server } = useServer();
const ID = 'TST00000001';

/** A data folder with a field at a station of the public service and one at the demo's. */
async function folderOfTwo(): Promise<string> {
  vi.stubEnv('DRYWAKE_RECORDS', ADDRESS);
  onTestFinished(() => void vi.unstubAllEnvs());
  const folder = tempFolder();
  const store = await openFieldsStore(folder, { now: tickingClock() });
  await store.fields.put(fieldOf({ id: 'real', station: ID, evidence: [] }), null);
  await store.fields.put(fieldOf(), null);
  await store.close();
  return folder;
}

const refresh = async (folder: string) => {
  const { code, out, err } = await runDrywake(['refresh', '--json'], folder);
  expect([code, err]).toEqual([0, '']);
  return refreshSchema.parse(JSON.parse(out));
};

it('a refresh fetches the record of a field’s station and imports it', async () => {
  const folder = await folderOfTwo();
  const asked: string[] = [];
  const answers: Record<string, () => Response> = {
    'ghcnd-stations.txt': () => HttpResponse.text(stationLine(ID, 45, -111, 'MT', 'PLACE')),
    'ghcnd-inventory.txt': () => HttpResponse.text(inventoryLine(ID, 45, -111, 'PRCP', 1950, 2025)),
    [`by_station/${ID}.csv.gz`]: () => new HttpResponse(Uint8Array.from(recordGz(20, ID))),
  };
  server.use(
    http.get(`${ADDRESS}*`, ({ request }) => {
      const place = request.url.slice(ADDRESS.length);
      asked.push(place);
      return answers[place]?.() ?? new HttpResponse(null, { status: 404 });
    }),
  );
  const { weather, answered, problems } = await refresh(folder);
  expect(asked).toContain(`by_station/${ID}.csv.gz`);
  expect(weather.text).toBe('1 of 1 station brought up to date from the public records service.');
  expect(weather.stations.map(({ id, text }) => [id, text])).toEqual([
    [ID, 'Fetched and imported.'],
    ['demo-invented', 'Not a record of the public service.'],
  ]);
  expect(weather.stations[0].lastDate).not.toBeNull();
  // Twenty days of weather carry no answer, which is told; the other field has its two.
  expect([answered, problems.map(({ fieldId }) => fieldId)]).toEqual([2, ['real', 'real']]);
});

it('a refresh says that the network is off, and answers from what is here', async () => {
  const folder = await folderOfTwo();
  server.use(http.get(`${ADDRESS}*`, () => HttpResponse.error()));
  const { weather, answered } = await refresh(folder);
  expect(weather.text).toMatch(
    /^The public records service did not answer, so the answers rest on the records that are here, which are as they were\. /,
  );
  expect(answered).toBe(2);
});
