import { describe, expect, it } from 'vitest';
import { bringUp } from '../../src/app/bringUp.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { SourceFailedError } from '../../src/errors.ts';
import type { FetchSummary } from '../../src/schema/fetchSummary.ts';
import type { StationExtent } from '../../src/schema/weather.ts';

const [demo] = await createDemoReader().stations();
const real = (id: string): StationExtent => ({ ...demo, id, invented: false, lastDate: '2026-11-20' });

const summaryOf = (id: string, outcome: 'fetched' | 'unchanged' | 'failed'): FetchSummary => ({
  address: 'http://records.example/',
  wanted: [id],
  fetched: outcome === 'fetched' ? 1 : 0,
  unchanged: outcome === 'unchanged' ? 1 : 0,
  imported: outcome === 'failed' ? 0 : 1,
  failed: outcome === 'failed' ? 1 : 0,
  stopped: false,
  files: [
    {
      ...{ title: id, outcome, imported: null },
      problem: outcome === 'failed' ? { code: 'X', message: `${id} is damaged.`, hint: '' } : null,
    },
  ],
});

const IDS = ['USC00241044', 'USW00024132', 'USC00240001', 'demo-invented', 'own-gauge'];

describe('bringing weather up to date', () => {
  it('asks for stations of the public service only, and tells what became of each', async () => {
    const asked: string[] = [];
    const brought = await bringUp(IDS, {
      stations: async () => [demo, real('USC00241044'), real('own-gauge')],
      fetch: async (id) => {
        asked.push(id);
        return summaryOf(id, (['fetched', 'unchanged', 'failed'] as const)[asked.length - 1]);
      },
    });
    expect(asked).toEqual(IDS.slice(0, 3));
    expect(brought.text).toBe('2 of 3 stations brought up to date from the public records service.');
    expect(brought.stations.map(({ id, lastDate, text }) => [id, lastDate, text])).toEqual([
      ['USC00241044', '2026-11-20', 'Fetched and imported.'],
      ['USW00024132', null, 'Nothing newer at the service.'],
      ['USC00240001', null, 'USC00240001 is damaged.'],
      ['demo-invented', demo.lastDate, 'Not a record of the public service.'],
      ['own-gauge', '2026-11-20', 'Not a record of the public service.'],
    ]);
  });

  it('says so in a sentence where the network is off, and asks no further', async () => {
    let asked = 0;
    const brought = await bringUp(IDS, {
      stations: async () => [],
      fetch: async () => {
        asked++;
        throw new SourceFailedError('SERVICE_UNREACHABLE', 'http://records.example/ cannot be reached.');
      },
    });
    expect(asked).toBe(1);
    expect(brought.text).toBe(
      'The public records service did not answer, so the answers rest on the records that are here, which are as they were. http://records.example/ cannot be reached.',
    );
    expect(brought.stations[1].text).toBe('Not asked for any more.');
  });
});
