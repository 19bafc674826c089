import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

const projectRoot = fileURLToPath(new URL('../../', import.meta.url));
const script = fileURLToPath(new URL('importChild.ts', import.meta.url));

/** An import by another process, which has the store open when this returns. */
export async function importInOtherProcess(folder: string, files: readonly string[]) {
  const child = spawn(process.execPath, ['--import', 'tsx', script, folder, ...files], {
    cwd: projectRoot,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(child, 'close');
  const kill = async () => {
    child.kill('SIGKILL');
    await ended;
  };
  onTestFinished(kill);
  let said = '';
  child.stdout.on('data', (text) => {
    said += text;
  });
  await Promise.race([once(child.stdout, 'data'), ended]);
  /** What became of the files so far, a line each. */
  const outcomes = () => said.split('\n').slice(1, -1);
  return {
    kill,
    outcomes,
    /** Until the outcomes of so many files are said, or the import has ended by itself. */
    said: async (files: number) => {
      while (outcomes().length < files && child.exitCode === null)
        await Promise.race([once(child.stdout, 'data'), ended]);
    },
    /** Exit code, once it has ended by itself. */
    ended: async () => (await ended)[0] as number | null,
  };
}
