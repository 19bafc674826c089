import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe } from 'vitest';

/** A folder that some machines have beside the project. */
export interface SharedFolder {
  /** Where it is, or null where this machine has none. */
  readonly path: string | null;
  /**
   * A `describe` for tests that need it. Where it is absent its tests show as skipped, and one line on the console
   * says why (once per test file, however many groups it holds).
   */
  describeWith(name: string, tests: (path: string) => void): void;
}

/**
 * A folder of `../shared`.
 * @param holds what its tests are about, as the line on the console names it
 */
export function sharedFolder(name: string, holds: string): SharedFolder {
  const folder = fileURLToPath(new URL(`../../shared/${name}/`, import.meta.url)).replace(/[\\/]$/, '');
  const path = existsSync(`${folder}/SOURCES.md`) ? folder : null;
  let told = false;
  return {
    path,
    describeWith(group, tests) {
      if (path === null && !told) {
        told = true;
        console.warn(`Skipped: tests on ${holds}; ../shared/${name} is not there.`);
      }
      describe.skipIf(path === null)(group, () => tests(path ?? folder));
    },
  };
}
