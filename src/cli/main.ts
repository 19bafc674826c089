import { resolve } from 'node:path';
import { realDeps } from './realDeps.ts';
import { run } from './run.ts';
import { terminalOf } from './terminalOf.ts';

/** Resolves at the first Ctrl-C or request to end. */
const stopAsked = () =>
  new Promise<void>((done) => {
    process.once('SIGINT', () => done());
    process.once('SIGTERM', () => done());
  });

// A reader that stops early (`drywake … | head`) is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await run(
  process.argv.slice(2),
  realDeps(terminalOf(process, process.env), resolve(process.env.DRYWAKE_HOME || '.drywake'), stopAsked),
);
