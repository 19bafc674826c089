import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe } from 'vitest';

const folder = fileURLToPath(new URL('../../shared/weather/', import.meta.url)).replace(/[\\/]$/, '');

/** Folder of the real station records beside the project, or null where this machine has none. */
export const sharedWeather: string | null = existsSync(`${folder}/SOURCES.md`) ? folder : null;

let told = false;

/**
 * A `describe` for tests that need the real records. Where they are absent its tests show as skipped,
 * and one line on the console says why (once per test file, however many groups it holds).
 */
export function describeWithRecords(name: string, tests: (folder: string) => void): void {
  if (sharedWeather === null && !told) {
    told = true;
    console.warn('Skipped: tests on real station records; ../shared/weather is not there.');
  }
  describe.skipIf(sharedWeather === null)(name, () => tests(sharedWeather ?? folder));
}
