import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { setupServer } from 'msw/node';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { createRecordsService, type FetchedFile } from '../../../src/source/service/recordsService.ts';
import type { ServiceClock } from '../../../src/source/service/serviceClock.ts';
import type { ServiceOptions } from '../../../src/source/service/serviceOptions.ts';
import { tempFolder } from '../../tempFolder.ts';

/** Address of the made-up service. */
export const ADDRESS = 'https://records.test/daily/';
export const ID = 'TST00000001';
export const STATION_URL = `${ADDRESS}by_station/${ID}.csv.gz`;

/** A made-up record of so many days in the by-station layout. */
export function recordCsv(days = 20, id = ID): string {
  const lines = Array.from({ length: days }, (_, i) => {
    const date = `2001${String(1 + Math.floor(i / 28)).padStart(2, '0')}${String(1 + (i % 28)).padStart(2, '0')}`;
    return `${id},${date},PRCP,${(i * 37) % 90},,,N,\n`;
  });
  return lines.join('');
}

export const recordGz = (days?: number, id?: string): Buffer => gzipSync(recordCsv(days, id));

/** A server of MSW for the tests of a file; any request without a handler is an error and is listed. */
export function useServer() {
  const server = setupServer();
  const unhandled: string[] = [];
  beforeAll(() => {
    server.events.on('request:unhandled', ({ request }) => unhandled.push(request.url));
    server.listen({ onUnhandledRequest: 'error' });
  });
  afterEach(() => {
    server.resetHandlers();
    unhandled.length = 0;
  });
  afterAll(() => server.close());
  return { server, unhandled };
}

/** A clock whose waits end at once and are noted. */
export function fakeClock(startMs = Date.parse('2026-01-01T00:00:00Z')): ServiceClock & { waits: number[] } {
  let nowMs = startMs;
  const waits: number[] = [];
  return {
    waits,
    now: () => nowMs,
    async wait(ms, signal) {
      signal?.throwIfAborted();
      waits.push(ms);
      nowMs += ms;
      await new Promise(setImmediate);
    },
  };
}

/** A client of the made-up service with an own folder, without spacing and jitter. */
export function newService(more: Partial<ServiceOptions> = {}) {
  const folder = more.folder ?? tempFolder();
  const clock = fakeClock();
  const service = createRecordsService({
    address: ADDRESS,
    folder,
    clock,
    random: () => 1,
    spacingMs: 0,
    firstWaitMs: 1000,
    ...more,
  });
  const kept = (name: string) => (existsSync(join(folder, name)) ? readFileSync(join(folder, name)) : null);
  return { service, folder, clock, kept };
}

/** All files that a fetch of these stations gives. */
export async function fetchAll(
  service: ReturnType<typeof createRecordsService>,
  ids: readonly string[],
  control: Parameters<typeof service.fetch>[1] = {},
): Promise<FetchedFile[]> {
  const files: FetchedFile[] = [];
  for await (const batch of service.fetch({ ids, years: [] }, control)) files.push(...batch);
  return files;
}

/** One line of the station list. */
export const stationLine = (id: string, lat: number, lon: number, state: string, name: string): string =>
  `${id} ${lat.toFixed(4).padStart(8)} ${lon.toFixed(4).padStart(9)} ${'1000.0'.padStart(6)} ${state.padEnd(2)} ${name.padEnd(30)}\n`;

/** One line of the inventory. */
export const inventoryLine = (
  id: string,
  lat: number,
  lon: number,
  element: string,
  first: number,
  last: number,
): string =>
  `${id} ${lat.toFixed(4).padStart(8)} ${lon.toFixed(4).padStart(9)} ${element} ${first} ${last}\n`;
