import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A package as the lock file has it. */
export interface LockedPackage {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly dev?: boolean;
  readonly link?: boolean;
  readonly hasInstallScript?: boolean;
}

const fileOf = (name: string) => fileURLToPath(new URL(`../../${name}`, import.meta.url));

/** All packages of the lock file. */
export function lockedPackages(): LockedPackage[] {
  const { packages } = JSON.parse(readFileSync(fileOf('package-lock.json'), 'utf8'));
  return Object.entries<LockedPackage>(packages)
    .filter(([path]) => path !== '')
    .map(([path, entry]) => ({ ...entry, name: path.slice(path.lastIndexOf('node_modules/') + 13) }));
}

/** Where the list of licences stands. */
export const LICENCES = fileOf('data/LICENCES.md');

/** What the program runs with, by licence, as the lock file has it. */
export function licencesText(): string {
  const groups = new Map<string, Set<string>>();
  for (const { name, version, license = 'unknown', dev } of lockedPackages()) {
    if (dev) continue;
    groups.set(license, (groups.get(license) ?? new Set()).add(`${name} ${version}`));
  }
  const parts = [...groups].sort(([one], [other]) => (one < other ? -1 : 1));
  return `# Licences of what Drywake runs with

Written by \`npx tsx test/tools/writeLicences.ts\` from the lock file; a test holds it to that. Optional parts for other
systems are in it. The texts of the licences come with the packages.
${parts
  .map(
    ([license, names]) =>
      `\n## ${license}\n\n${[...names]
        .sort()
        .map((name) => `- ${name}\n`)
        .join('')}`,
  )
  .join('')}`;
}
