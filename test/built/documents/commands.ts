import { readdirSync, readFileSync } from 'node:fs';
import { marked, type Token, type Tokens } from 'marked';
import { COMMANDS } from '../../../src/cli/commandList.ts';
import { commandsOf, type Document, documents, fencesOf } from './fences.ts';

const PROJECT = new URL('../../../', import.meta.url);

/** A piece of code within a document: a line of a shell block, or what stands between backticks in a sentence. */
export interface Named {
  readonly path: string;
  readonly code: string;
}

/** What runs a command: the built program in a user's folder, or the project's own tools in a copy of the project. */
export type Runner = 'program' | 'project';

const FIRST_WORDS =
  /^(?:[A-Z_]+=\S+ )*(?:npx|npm|node|drywake|vitest|tsx|bash|sh|git|cd|curl|\.\/|\.ci\/)(?: |run)/;
const WITH_FLAG = new RegExp(`^(?:${COMMANDS.map(({ name }) => name).join('|')})(?: [a-z]+)? --`);

/** Whether code within a sentence is a command, or the end of one. */
export const isCommand = ({ code }: Named): boolean =>
  FIRST_WORDS.test(code) || WITH_FLAG.test(code) || /^-- /.test(code);

/** A command as it would be typed whole: the end of one is that of a bench. */
export const wholeCommand = (code: string): string => {
  if (code.startsWith('-- ')) return `npm run bench ${code}`;
  return WITH_FLAG.test(code) || code.startsWith('drywake ')
    ? `npx drywake ${code.replace(/^drywake /, '')}`
    : code;
};

/** What runs a whole command; null where nothing does. */
export function runnerOf(command: string): Runner | null {
  if (/^(?:[A-Z_]+=\S+ )*(?:npm |npx (?:vitest|tsx) |\.ci\/run\b)/.test(command)) return 'project';
  return command.startsWith('npx drywake ') ? 'program' : null;
}

/** Lines of a shell block, each on one line, without remarks and without what is printed under them. */
export const linesOf = (block: string): string[] =>
  commandsOf(block)
    .flatMap(({ command }) => command.replaceAll(/\\\n\s*/g, '').split('\n'))
    .flatMap((line) => line.replace(/\s+#.*$/, '').split(' && '))
    .filter((line) => line !== '');

/** Whether a shell block is about the project itself. */
export const isProjectBlock = (block: string): boolean =>
  linesOf(block).every((line) => runnerOf(line) === 'project');

/** All lines of the shell blocks of a document. */
export const linesIn = (document: Document): Named[] =>
  fencesOf(document)
    .filter(({ kind }) => kind === 'sh')
    .flatMap(({ text }) => linesOf(text))
    .map((code) => ({ path: document.path, code }));

/** All code within sentences, of documents and of what notebooks say. */
export function codeInSentences(): Named[] {
  const written = documents().flatMap(({ path, text }) =>
    spansIn(marked.lexer(text)).map((code) => ({ path, code })),
  );
  const said = readdirSync(new URL('notebooks/', PROJECT))
    .filter((name) => name.endsWith('.ts'))
    .flatMap((name) => {
      const text = readFileSync(new URL(`notebooks/${name}`, PROJECT), 'utf8');
      const found = text.matchAll(/(?:<code>|\\`|“)((?:npx |npm |drywake )[^<\\”]+)/g);
      return [...found].map(([, code]) => ({ path: `notebooks/${name}`, code }));
    });
  return [...written, ...said];
}

const spansIn = (tokens: readonly Token[]): string[] =>
  tokens.flatMap((token) => {
    if (token.type === 'codespan') return [(token as Tokens.Codespan).text];
    if (token.type === 'table') {
      const { header, rows } = token as Tokens.Table;
      return [header, ...rows].flat().flatMap((cell) => spansIn(cell.tokens));
    }
    if (token.type === 'list') return (token as Tokens.List).items.flatMap((item) => spansIn(item.tokens));
    return 'tokens' in token && token.tokens ? spansIn(token.tokens) : [];
  });
