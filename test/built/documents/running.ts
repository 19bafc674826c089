import type { ChildProcess } from 'node:child_process';

/** What a command printed, and how it ended. */
export interface Printed {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A server says where it is and then goes on until it is stopped. */
export const isServer = (command: string): boolean => /^(?:npm start|npx drywake serve)\b/.test(command);

/** Waits for the end of a process. */
export function ended(child: ChildProcess): Promise<Printed> {
  return new Promise((resolve, reject) => {
    let out = '';
    let err = '';
    child.stdout?.on('data', (chunk: Buffer) => {
      out += chunk.toString();
    });
    child.stderr?.on('data', (chunk: Buffer) => {
      err += chunk.toString();
    });
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, out, err }));
  });
}

/**
 * Waits until a server says where it is, asks it how it is, and stops it, with all processes of its group, by a signal. It
 * ends well where it was well and nothing answers there any more.
 * @param child its process, which leads a group of its own
 */
export async function stoppedServer(child: ChildProcess): Promise<Printed> {
  const printed = ended(child);
  const address = new Promise<string | null>((found) => {
    let out = '';
    child.stdout?.on('data', (chunk: Buffer) => {
      out += chunk.toString();
      const at = /http:\/\/127\.0\.0\.1:\d+\//.exec(out)?.[0];
      if (at !== undefined && out.includes('Ctrl-C')) found(at);
    });
    child.once('close', () => found(null));
  });
  const at = await address;
  if (at === null || child.pid === undefined) return printed;
  const health = await fetch(`${at}api/health`);
  const said = await health.text();
  process.kill(-child.pid, 'SIGTERM');
  const { out, err } = await printed;
  const isGone = await fetch(at).then(
    () => false,
    () => true,
  );
  return { code: health.ok && isGone ? 0 : 1, out, err: `${err}health ${health.status}: ${said}` };
}
