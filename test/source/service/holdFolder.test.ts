import { spawnSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { holdFolder } from '../../../src/source/service/holdFolder.ts';
import { refusalOf } from '../../refusal.ts';
import { tempFolder } from '../../tempFolder.ts';

it('one fetch at a time holds a folder; a second is told who does', async () => {
  const folder = join(tempFolder(), 'records');
  const giveBack = await holdFolder(folder);
  const { code, message, hint } = await refusalOf(holdFolder(folder));
  expect(code).toBe('FETCH_RUNNING');
  expect(message).toBe(`Another fetch into ${folder} is running (process ${process.pid}).`);
  expect(hint).toContain('Wait until it has ended');
  await giveBack();
  await (await holdFolder(folder))();
  expect(existsSync(join(folder, 'fetch.lock'))).toBe(false);
});

it('takes over what a killed fetch left held', async () => {
  const folder = tempFolder();
  const { pid } = spawnSync(process.execPath, ['-e', '']);
  writeFileSync(join(folder, 'fetch.lock'), `${pid}\n`);
  await (await holdFolder(folder))();
  expect(existsSync(join(folder, 'fetch.lock'))).toBe(false);
});
