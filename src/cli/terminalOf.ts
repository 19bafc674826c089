import type { Terminal } from './command.ts';

/** The part of an output stream that a terminal needs. */
interface Stream {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/**
 * What commands know of the terminal: progress only where the error stream is one, colour only where the output is one
 * and NO_COLOR is not set to anything.
 */
export const terminalOf = (
  { stdout, stderr }: { readonly stdout: Stream; readonly stderr: Stream },
  environment: Readonly<Record<string, string | undefined>>,
): Terminal => ({
  out: (text) => void stdout.write(text),
  err: (text) => void stderr.write(text),
  interactive: stderr.isTTY === true,
  colour: stdout.isTTY === true && !environment.NO_COLOR,
});
