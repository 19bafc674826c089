import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sharedWeather } from '../../sharedWeather.ts';
import { isMade } from './isMade.ts';
import { ended, isServer, type Printed, stoppedServer } from './running.ts';

const PROJECT = fileURLToPath(new URL('../../../', import.meta.url));

/** A copy of the project in a folder of its own, as it would be after a fresh checkout. */
export interface ProjectCopy {
  run(command: string): Promise<Printed>;
  /** Ends what still runs in it and takes the folder away. */
  leave(): void;
}

/** Copies all of the project that is not made by installing, building or testing it; real records are linked beside it. */
export function copyProject(): ProjectCopy {
  const whole = mkdtempSync(join(tmpdir(), 'drywake-copy-'));
  const folder = join(whole, 'project');
  cpSync(PROJECT, folder, { recursive: true, filter: (path) => !isMade(basename(path)) });
  if (sharedWeather !== null) {
    mkdirSync(join(whole, 'shared'));
    symlinkSync(sharedWeather, join(whole, 'shared', 'weather'));
  }
  const running = new Set<ChildProcess>();
  return {
    run: (command) => {
      const options = { cwd: folder, env: environment(), detached: true } as const;
      const child = spawn('bash', ['-euo', 'pipefail', '-c', command], {
        ...options,
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      running.add(child);
      child.once('close', () => running.delete(child));
      return isServer(command) ? stoppedServer(child) : ended(child);
    },
    leave: () => {
      for (const { pid } of running) if (pid !== undefined) process.kill(-pid, 'SIGKILL');
      rmSync(whole, { recursive: true, force: true });
    },
  };
}

/** This process's own, without what its test runner and npm have set for it; packages that are here are taken from here. */
function environment(): NodeJS.ProcessEnv {
  const own = Object.entries(process.env).filter(
    ([name]) => !/^(?:VITEST|NODE_ENV$|TEST$|PROD$|DEV$|MODE$|npm_(?:lifecycle|package|command))/.test(name),
  );
  return { ...Object.fromEntries(own), npm_config_prefer_offline: 'true', NO_COLOR: '1' };
}
