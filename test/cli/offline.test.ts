import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { expect, it } from 'vitest';
import { bundled } from '../bundled.ts';
import { tempFolder } from '../tempFolder.ts';

it('where the network is refused, all but a fetch works, and nothing but a fetch tries it', async () => {
  const program = await bundled('test/cli/offlineChild.ts');
  const { stdout } = await promisify(execFile)(process.execPath, [program, tempFolder()]);
  const { codes, answered, before, after } = JSON.parse(stdout);
  const { 'weather fetch USC00241044': fetched, ...others } = codes;
  expect(Object.entries(others).filter(([, code]) => code !== 0)).toEqual([]);
  expect(answered.filter((status: number) => status !== 200 && status !== 404)).toEqual([]);
  expect(before).toEqual([]);
  expect(fetched).not.toBe(0);
  expect(after.length).toBeGreaterThan(0);
});
