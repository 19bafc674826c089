import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sharedWeather } from '../../sharedWeather.ts';
import { ended, isServer, type Printed, stoppedServer } from './running.ts';

const PROJECT = fileURLToPath(new URL('../../../', import.meta.url));

/** A copy of the project in a folder of its own, as it would be after a fresh checkout. */
export interface ProjectCopy {
  run(command: string): Promise<Printed>;
  /** Takes the folder away. */
  leave(): void;
}

/** Copies all of the project that is not made by installing, building or testing it; real records are linked beside it. */
export function copyProject(): ProjectCopy {
  const whole = mkdtempSync(join(tmpdir(), 'drywake-copy-'));
  const folder = join(whole, 'project');
  const ignored = readFileSync(join(PROJECT, '.gitignore'), 'utf8').trim().split('\n');
  const names = new Set(['.git', ...ignored.map((line) => line.replace(/\/$/, ''))]);
  const isMade = (name: string) => names.has(name) || name.endsWith('.tsbuildinfo');
  cpSync(PROJECT, folder, { recursive: true, filter: (path) => !isMade(path.split('/').at(-1) ?? '') });
  if (sharedWeather !== null) {
    mkdirSync(join(whole, 'shared'));
    symlinkSync(sharedWeather, join(whole, 'shared', 'weather'));
  }
  return {
    run: (command) => {
      const options = { cwd: folder, env: environment(), detached: true } as const;
      const child = spawn('bash', ['-euo', 'pipefail', '-c', command], {
        ...options,
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      return isServer(command) ? stoppedServer(child) : ended(child);
    },
    leave: () => rmSync(whole, { recursive: true, force: true }),
  };
}

/** This process's own, without what its test runner and npm have set for it; packages that are here are taken from here. */
function environment(): NodeJS.ProcessEnv {
  const own = Object.entries(process.env).filter(
    ([name]) => !/^(?:VITEST|NODE_ENV$|TEST$|PROD$|DEV$|MODE$|npm_(?:lifecycle|package|command))/.test(name),
  );
  return { ...Object.fromEntries(own), npm_config_prefer_offline: 'true', NO_COLOR: '1' };
}
