import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { LICENCES, licencesText, lockedPackages } from './tools/licences.ts';

const read = (name: string) => readFileSync(fileURLToPath(new URL(`../${name}`, import.meta.url)), 'utf8');
const manifest = JSON.parse(read('package.json'));
const declared: Record<string, string> = { ...manifest.dependencies, ...manifest.devDependencies };
const packages = lockedPackages();

describe('what the program is made of', () => {
  it('is named to the last digit', () => {
    for (const [name, version] of Object.entries(declared))
      expect(version, name).toMatch(/^\d+\.\d+\.\d+(-[\w.-]+)?$/);
    expect(read('.npmrc')).toContain('save-exact=true');
  });

  it('is locked: every package with its checksum, from one place or from none', () => {
    expect(packages.length).toBeGreaterThan(300);
    for (const { name, integrity } of packages)
      expect(integrity, name).toMatch(/^sha512-[A-Za-z0-9+/]{86}==$/);
    const places = packages.flatMap(({ resolved }) =>
      resolved === undefined ? [] : [new URL(resolved).origin],
    );
    expect(new Set(places).size).toBeLessThanOrEqual(1);
    for (const [name, version] of Object.entries(declared)) {
      expect(
        packages.some((one) => one.name === name && one.version === version),
        name,
      ).toBe(true);
    }
  });

  it('runs no script when it is installed, but for two that only development has', () => {
    const scripts = packages.filter(({ hasInstallScript }) => hasInstallScript);
    expect(scripts.map(({ name, dev }) => [name, dev]).sort()).toEqual([
      ['esbuild', true],
      ['msw', true],
    ]);
    const documented = read('DEVELOPERS.md');
    for (const { name } of scripts) expect(documented).toContain(`\`${name}\``);
  });

  it('has its licences listed, none of them one that asks for more than naming', () => {
    expect(readFileSync(LICENCES, 'utf8')).toBe(licencesText());
    for (const { name, license, dev } of packages) {
      if (!dev)
        expect(license, name).toMatch(
          /^(MIT|ISC|0BSD|Unlicense|BSD-3-Clause|OFL-1\.1|Apache-2\.0( AND BSL-1\.0)?)$/,
        );
    }
  });
});
