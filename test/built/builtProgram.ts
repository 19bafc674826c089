import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The built program; `npm test` builds it first. */
export const PROGRAM = fileURLToPath(new URL('../../dist/bin/drywake.js', import.meta.url));
if (!existsSync(PROGRAM)) throw new Error('The program is not built; run npm run build first.');

/** Runs the built program to its end, in a folder of its own. */
export function runBuilt(argv: readonly string[], storeFolder: string) {
  const start = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...argv], {
    encoding: 'utf8',
    env: { ...process.env, DRYWAKE_HOME: storeFolder, NO_COLOR: '1' },
  });
  return { code: status, out: stdout, err: stderr, ms: performance.now() - start };
}

export interface BuiltServer {
  readonly address: string;
  readonly process: ChildProcess;
  /** Asks it to end and gives its exit code. */
  stop(): Promise<number | null>;
}

/** Starts the built server on a free port and waits for the address it prints. */
export function startBuilt(storeFolder: string, port = 0): Promise<BuiltServer> {
  const child = spawn(process.execPath, [PROGRAM, 'serve', '--port', String(port)], {
    env: { ...process.env, DRYWAKE_HOME: storeFolder },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  return new Promise((resolve, reject) => {
    let out = '';
    let err = '';
    const ended = new Promise<number | null>((done) => {
      child.once('exit', done);
    });
    child.stderr.on('data', (chunk: Buffer) => {
      err += chunk.toString();
    });
    child.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(out)?.[0];
      if (!address) return;
      resolve({
        address,
        process: child,
        stop: () => {
          child.kill('SIGTERM');
          return ended;
        },
      });
    });
    void ended.then((code) => reject(new Error(`The server ended with ${code}: ${out}${err}`)));
  });
}
