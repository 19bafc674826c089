import { resolve } from 'node:path';
import { realDeps } from './realDeps.ts';
import { run } from './run.ts';

/** Resolves at the first Ctrl-C or request to end. */
const stopAsked = () =>
  new Promise<void>((done) => {
    process.once('SIGINT', () => done());
    process.once('SIGTERM', () => done());
  });

const terminal = {
  out: (text: string) => void process.stdout.write(text),
  err: (text: string) => void process.stderr.write(text),
  interactive: process.stderr.isTTY === true,
  colour: process.stdout.isTTY === true && !process.env.NO_COLOR,
};

// A reader that stops early (`drywake … | head`) is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await run(
  process.argv.slice(2),
  realDeps(terminal, resolve(process.env.DRYWAKE_HOME || '.drywake'), stopAsked),
);
