import type { Terminal } from './command.ts';

/** Progress of long work on the error stream. */
export interface ProgressLine {
  show(done: number, of: number): void;
  /** Clears the line. */
  end(): void;
}

/** Share of the work after which a stream that is no terminal gets a line. */
const STEP = 0.25;

/** One line that is written over itself on a terminal; elsewhere a line for each quarter of the work. */
export function createProgressLine(
  { err, interactive }: Pick<Terminal, 'err' | 'interactive'>,
  what: string,
): ProgressLine {
  let told = 0;
  let width = 0;
  return {
    show(done, of) {
      const share = of === 0 ? 1 : done / of;
      const steps = Math.floor(share / (interactive ? 0.01 : STEP));
      if (steps <= told) return;
      told = steps;
      const text = `${done} of ${of} ${what}, ${Math.round(share * 100)} %`;
      width = Math.max(width, text.length);
      err(interactive ? `\r${text.padEnd(width)}` : `${text}\n`);
    },
    end() {
      if (interactive && width > 0) err(`\r${' '.repeat(width)}\r`);
    },
  };
}
