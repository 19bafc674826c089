import { realDeps } from '../../src/cli/realDeps.ts';
import { run } from '../../src/cli/run.ts';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs one command line with the real adapters, the store in `storeFolder`. */
export async function runDrywake(argv: readonly string[], storeFolder: string): Promise<Ran> {
  let out = '';
  let err = '';
  const terminal = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    interactive: false,
    colour: false,
  };
  const code = await run(
    argv,
    realDeps(terminal, storeFolder, async () => undefined),
  );
  return { code, out, err };
}
