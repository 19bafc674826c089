import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { type BuiltServer, startBuilt } from '../built/builtProgram.ts';
import { launchBrowser } from './openPage.ts';

/** The built server over an empty data folder, and a browser; both end with the test file. */
export interface Served {
  readonly store: string;
  readonly server: BuiltServer;
  readonly browser: Browser;
}

/**
 * Starts both before the file's tests; the members may be read inside tests only.
 * @param prepare what goes into the data folder first
 */
export function served(prepare: (store: string) => Promise<void> = async () => {}): Served {
  const running = {} as { store: string; server: BuiltServer; browser: Browser };
  beforeAll(async () => {
    running.store = mkdtempSync(join(tmpdir(), 'drywake-browser-'));
    await prepare(running.store);
    running.server = await startBuilt(running.store);
    running.browser = await launchBrowser();
  });
  afterAll(async () => {
    await running.browser?.close();
    await running.server?.stop();
    rmSync(running.store, { recursive: true, force: true });
  });
  return running;
}
