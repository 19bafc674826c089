import { readdirSync, readFileSync } from 'node:fs';
import { marked } from 'marked';
import { isMade } from './isMade.ts';

const PROJECT = new URL('../../../', import.meta.url);

/** A document, by its path in the project. */
export interface Document {
  readonly path: string;
  readonly text: string;
}

/** Every document of the project, for users and for developers. */
export const documents = (): Document[] =>
  foldersOf('')
    .flatMap((folder) => readdirSync(new URL(folder, PROJECT)).map((name) => `${folder}${name}`))
    .filter((path) => path.endsWith('.md'))
    .map((path) => ({ path, text: readFileSync(new URL(path, PROJECT), 'utf8') }));

const foldersOf = (folder: string): string[] => [
  folder,
  ...readdirSync(new URL(folder, PROJECT), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !isMade(entry.name))
    .flatMap((entry) => foldersOf(`${folder}${entry.name}/`)),
];

/** A fenced block: the first word after its fence says what it is, a second names the file that it shows. */
export interface Fence {
  readonly kind: string;
  readonly fileName: string | null;
  readonly text: string;
}

/** The fenced blocks of a document, in order. */
export const fencesOf = ({ text }: Document): Fence[] =>
  marked.lexer(text).flatMap((token) => {
    if (token.type !== 'code') return [];
    const [kind = '', fileName = null] = (token.lang ?? '').split(' ');
    return [{ kind, fileName, text: token.text as string }];
  });

/** Files that documents show, by their names; every document may use them. */
export const namedFiles = (): Map<string, string> =>
  new Map(
    documents()
      .flatMap(fencesOf)
      .flatMap(({ fileName, text }) => (fileName === null ? [] : [[fileName, text] as const])),
  );

/** A command of a block, with the output shown under it; null where none is shown. */
export interface ShownCommand {
  readonly command: string;
  readonly output: string | null;
}

/**
 * The commands of an sh block. Where lines begin with "$ " each is a command of its own, with the lines under it as its
 * output; else the whole block is one script.
 */
export function commandsOf(block: string): ShownCommand[] {
  if (!/^\$ /m.test(block)) return [{ command: block, output: null }];
  return block
    .split(/^\$ /m)
    .slice(1)
    .map((part) => {
      const lines = part.split('\n');
      const last = lines.findIndex((line) => !line.endsWith('\\'));
      const output = lines
        .slice(last + 1)
        .join('\n')
        .trimEnd();
      return { command: lines.slice(0, last + 1).join('\n'), output: output === '' ? null : output };
    });
}

/** Whether a printed text is the one that is shown; a line of nothing but … stands for any lines. */
export function isShown(shown: string, printed: string): boolean {
  const parts = shown.split(/^…\n?/m).map((part) => part.trimEnd());
  if (parts.length === 1) return shown === printed.trimEnd();
  let at = 0;
  for (const [index, part] of parts.entries()) {
    const found = printed.indexOf(part, at);
    if (found < 0 || (index === 0 && found > 0)) return false;
    at = found + part.length;
  }
  return parts[parts.length - 1] === '' || printed.trimEnd().endsWith(parts[parts.length - 1]);
}
