import { CommanderError, Command as Program } from 'commander';
import { type Say, sayIn } from '../app/say.ts';
import { datesReworded } from '../dateWords.ts';
import { DrywakeError } from '../errors.ts';
import type { Wording } from '../schema/wording.ts';
import type { CliDeps } from './command.ts';
import { COMMANDS } from './commandList.ts';
import { flagOf } from './questionOptions.ts';
import { type WordingFlags, wordingOf } from './wordingOptions.ts';

/** Exit codes: 0 done, 2 bad input, 1 anything else. */
export const EXIT = { done: 0, other: 1, badInput: 2 } as const;

/** Exit code of each family of refusal; the only such table. */
const EXIT_OF = {
  'invalid-input': EXIT.badInput,
  'out-of-range': EXIT.badInput,
  'missing-data': EXIT.badInput,
  'source-failed': EXIT.badInput,
  conflict: EXIT.other,
} as const;

/**
 * Runs one command line and returns its exit code. Known refusals are told in two lines, without a stack.
 * @param argv the words after the program's name
 */
export async function run(argv: readonly string[], deps: CliDeps): Promise<number> {
  let wording: Wording = {};
  try {
    const program = await programFor(argv, deps);
    program.hook('preAction', (_, called) => {
      wording = wordingOf(called.opts<WordingFlags>());
    });
    await program.parseAsync(askedOf(program, argv), { from: 'user' });
    return EXIT.done;
  } catch (error) {
    return tell(error, deps, sayIn(wording));
  }
}

/** The program with all its commands by name, and with the flags of the one that a command line calls. */
export async function programFor(argv: readonly string[], deps: CliDeps): Promise<Program> {
  const { terminal } = deps;
  const program = new Program('drywake')
    .description(
      'How long a soil-residual herbicide stays harmful, from public daily weather: odds on a planting date, the date it clears, and why.',
    )
    .version(deps.version)
    .exitOverride()
    .configureOutput({ writeOut: terminal.out, writeErr: terminal.err })
    .showSuggestionAfterError()
    .addHelpText(
      'after',
      '\nExample:\n  drywake odds --station demo-invented --residual flumioxazin --crop lentil --applied 2026-08-14 --plant 2027-05-10\n',
    );
  const word = argv[0] === 'help' ? argv[1] : argv[0];
  const called = COMMANDS.find(({ name }) => name === word);
  for (const { name, summary, load } of COMMANDS) {
    const command = program.command(name).description(summary).copyInheritedSettings(program);
    if (name === called?.name) (await load()).define(command, deps);
  }
  return program;
}

/** A command line as it is parsed: help on a command that is not there asks for it, and is told what was probably meant. */
function askedOf(program: Program, argv: readonly string[]): readonly string[] {
  let at = program;
  for (const [index, word] of argv.entries()) {
    const next = argv[index + 1];
    const isHelp = word === 'help' && at.commands.length > 0 && next !== undefined && !next.startsWith('-');
    if (isHelp && !at.commands.some((command) => command.name() === next))
      return argv.filter((_, place) => place !== index);
    const below = at.commands.find((command) => command.name() === word);
    if (below === undefined) break;
    at = below;
  }
  return argv;
}

/** Dates of a message are written as those of the answer would be; a hint says what to type, and that is ISO dates. */
function tell(error: unknown, { terminal }: CliDeps, { dates }: Pick<Say, 'dates'>): number {
  if (error instanceof CommanderError) {
    // Help and version end the run too, with code 0; commander has written its own words.
    return error.exitCode === 0 ? EXIT.done : EXIT.badInput;
  }
  if (error instanceof DrywakeError) {
    const flag = typeof error.details.field === 'string' ? flagOf(error.details.field) : undefined;
    const message = datesReworded(error.message, dates);
    terminal.err(`${message}${flag ? ` [${flag}]` : ''}\n${error.hint ? `${error.hint}\n` : ''}`);
    return EXIT_OF[error.kind];
  }
  const reason = error instanceof Error ? (error.stack ?? error.message) : String(error);
  terminal.err(`Something went wrong that should not have; nothing was changed by it.\n${reason}\n`);
  return EXIT.other;
}
