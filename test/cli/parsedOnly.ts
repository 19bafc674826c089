import { type Command, CommanderError } from 'commander';
import { realDeps } from '../../src/cli/realDeps.ts';
import { programFor } from '../../src/cli/run.ts';

/**
 * What the program says against a command line when it only reads it, without doing any of it; null where it takes it:
 * the command is there, and so are its flags, with values that they take, and all that it asks for.
 */
export async function saidAgainst(argv: readonly string[], storeFolder: string): Promise<string | null> {
  let told = '';
  const terminal = {
    ...{ interactive: false, colour: false, out: () => {} },
    err: (text: string) => {
      told += text;
    },
  };
  const program = await programFor(
    argv,
    realDeps(terminal, storeFolder, async () => undefined),
  );
  doNothing(program);
  try {
    await program.parseAsync(argv, { from: 'user' });
    return null;
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? null : told || error.message;
  }
}

function doNothing(command: Command): void {
  if (command.commands.length === 0) command.action(() => {});
  for (const below of command.commands) doNothing(below);
}
