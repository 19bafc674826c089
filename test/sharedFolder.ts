import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, it } from 'vitest';

/** A folder that some machines have beside the project. */
export interface SharedFolder {
  /** Where it is, or null where this machine has none. */
  readonly path: string | null;
  /**
   * A `describe` for tests that need it. Where it is absent the group shows as skipped, and one line on the console
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
      // Nothing of the group is called where the folder is absent: it may read its files while it is put together.
      if (path === null) describe.skip(group, () => it(`needs ../shared/${name}`, () => {}));
      else describe(group, () => tests(path));
    },
  };
}
