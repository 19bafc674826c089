import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createContext, Script } from 'node:vm';
import { parseSync } from 'vite';
import { expect, it } from 'vitest';

const source = fileURLToPath(new URL('../src/', import.meta.url));
const LETTERS = 20_000;
/**
 * Time of the processor, which other work on the machine hardly changes: one text of that length takes a sound expression
 * far under a millisecond, one that goes over it again and again seconds.
 */
const MOST_MS = 400;

/** Time after which one that would never end is cut off. [ms] */
const CUT_OFF_MS = 10_000;

const apart = createContext({});
const script = new Script('expression.test(text)');

/** Whether an expression takes long over a text, or does not come to an end. */
function isSlow(expression: RegExp, text: string): boolean {
  Object.assign(apart, { expression, text });
  const begun = processorMs();
  try {
    script.runInContext(apart, { timeout: CUT_OFF_MS });
  } catch {
    return true;
  }
  return processorMs() - begun > MOST_MS;
}

/** [ms] */
const processorMs = (): number => process.cpuUsage().user / 1000;

interface Found {
  readonly file: string;
  readonly expression: RegExp;
}

/** Every regular expression that stands in the sources. */
function expressions(): Found[] {
  const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.ts'),
  );
  return files.flatMap((file) => {
    const found: Found[] = [];
    const walk = (node: unknown): void => {
      if (typeof node !== 'object' || node === null) return;
      const { regex } = node as { regex?: { pattern: string; flags: string } };
      if (regex)
        found.push({ file, expression: new RegExp(regex.pattern, regex.flags.replace(/[gy]/g, '')) });
      Object.values(node).forEach(walk);
    };
    walk(parseSync(file, readFileSync(join(source, file), 'utf8')).program);
    return found;
  });
}

/** What is said again and again in an attack. */
const PIECES = [...' a0,"=-.\n\'#T[(_:;\t', '1 ', 'a1', 'a-', '0,', ', ', '=1', 'ab '];

it('no regular expression takes long over a long text', () => {
  const all = expressions();
  expect(all.length).toBeGreaterThan(100);
  const slow = all.flatMap(({ file, expression }) =>
    PIECES.filter((piece) => isSlow(expression, `${piece.repeat(LETTERS / piece.length)}\u0000`)).map(
      (piece) => `${file} ${expression} "${piece}"`,
    ),
  );
  expect(slow).toEqual([]);
});
