import { spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROGRAM } from '../builtProgram.ts';
import { recordFiles } from './recordService.ts';
import { ended, isServer, type Printed, stoppedServer } from './running.ts';

/** `npx drywake` is the built program. */
const NPX = `#!/bin/sh
[ "$1" = drywake ] || { echo "npx $1 is not run here" >&2; exit 64; }
shift
exec "${process.execPath}" "${PROGRAM}" "$@"
`;

/** What is about the project itself is run in a copy of it. */
const NPM = '#!/bin/sh\necho "npm $1 is not run here" >&2\nexit 64\n';

/** A folder in which the commands of one document are run one after the other, and a data folder of its own. */
export interface Workplace {
  readonly folder: string;
  run(command: string): Promise<Printed>;
  /** Takes the folder away. */
  leave(): void;
}

/** A workplace with the weather records and the named files that documents take for granted. */
export function makeWorkplace(files: ReadonlyMap<string, string>, recordsAddress: string): Workplace {
  const whole = mkdtempSync(join(tmpdir(), 'drywake-document-'));
  const [folder, tools] = ['work', 'tools'].map((name) => join(whole, name));
  for (const one of [folder, tools]) mkdirSync(one);
  for (const [name, text] of [
    ['npx', NPX],
    ['npm', NPM],
  ]) {
    writeFileSync(join(tools, name), text);
    chmodSync(join(tools, name), 0o755);
  }
  mkdirSync(join(folder, 'records'));
  const { byStation, stations } = recordFiles();
  writeFileSync(join(folder, 'records', 'USC00241044.csv'), byStation);
  writeFileSync(join(folder, 'records', 'ghcnd-stations.txt'), stations);
  for (const [name, text] of files) writeFileSync(join(folder, name), `${text}\n`);
  const env = {
    ...process.env,
    PATH: `${tools}:${process.env.PATH}`,
    DRYWAKE_HOME: join(folder, '.drywake'),
    DRYWAKE_RECORDS: recordsAddress,
    NO_COLOR: '1',
  };
  return {
    folder,
    run: (command) => inShell(command, folder, env),
    leave: () => rmSync(whole, { recursive: true, force: true }),
  };
}

/** Runs a program of a document with Node itself. */
export const runProgram = (argv: readonly string[], cwd: string): Promise<Printed> =>
  ended(spawn(process.execPath, argv, { cwd, env: process.env }));

function inShell(command: string, cwd: string, env: NodeJS.ProcessEnv): Promise<Printed> {
  const child = spawn('bash', ['-euo', 'pipefail', '-c', command], {
    ...{ cwd, env, detached: true },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  return isServer(command) ? stoppedServer(child) : ended(child);
}
