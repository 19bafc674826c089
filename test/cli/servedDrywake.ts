import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

const projectRoot = fileURLToPath(new URL('../../', import.meta.url));

/** A server of the program, from its sources, in a process of its own; ends with the running test. */
export async function serveDrywake(storeFolder: string) {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', 'serve', '--port', '0'], {
    cwd: projectRoot,
    env: { ...process.env, DRYWAKE_HOME: storeFolder },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = once(child, 'exit');
  const end = async (signal: NodeJS.Signals) => {
    if (child.exitCode === null && child.signalCode === null) child.kill(signal);
    await ended;
    return child.exitCode;
  };
  onTestFinished(async () => void (await end('SIGKILL')));
  let said = '';
  let complained = '';
  child.stderr.on('data', (text) => {
    complained += text;
  });
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (text) => {
      said += text;
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said)?.[0];
      if (found !== undefined) resolve(found);
    });
    void ended.then(() => reject(new Error(`The server ended: ${said}${complained}`)));
  });
  return { address, pid: child.pid, end };
}
