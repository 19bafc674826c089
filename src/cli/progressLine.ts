import type { Terminal } from './command.ts';

/** Progress of long work on the error stream. */
export interface ProgressLine {
  show(done: number, of: number): void;
  /** Clears the line. */
  end(): void;
}

/** Share of the work after which the line is written anew. */
const STEP = 0.01;

/** One line that is written over itself on a terminal; nothing elsewhere, where only results and talk belong. */
export function createProgressLine(
  { err, interactive }: Pick<Terminal, 'err' | 'interactive'>,
  what: string,
): ProgressLine {
  let told = 0;
  let width = 0;
  return {
    show(done, of) {
      if (!interactive) return;
      const share = of === 0 ? 1 : done / of;
      const steps = Math.floor(share / STEP);
      if (steps <= told) return;
      told = steps;
      const text = `${done} of ${of} ${what}, ${Math.round(share * 100)} %`;
      width = Math.max(width, text.length);
      err(`\r${text.padEnd(width)}`);
    },
    end() {
      if (width > 0) err(`\r${' '.repeat(width)}\r`);
    },
  };
}
