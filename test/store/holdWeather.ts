import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

const projectRoot = fileURLToPath(new URL('../../', import.meta.url));

const SCRIPT = `
import { DuckDBInstance } from '@duckdb/node-api';
const instance = await DuckDBInstance.create(process.argv[1]);
const connection = await instance.connect();
for (const statement of process.argv.slice(2)) await connection.run(statement);
console.log('held');
setInterval(() => {}, 1000);
`;

/** Another process that opens a database file for writing, runs statements and keeps it open until killed. */
export async function holdInOtherProcess(path: string, ...statements: string[]) {
  const child = spawn(process.execPath, ['--input-type=module', '-e', SCRIPT, path, ...statements], {
    cwd: projectRoot,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const kill = async () => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const ended = once(child, 'exit');
    child.kill('SIGKILL');
    await ended;
  };
  onTestFinished(kill);
  await once(child.stdout, 'data');
  return { pid: child.pid, kill };
}
