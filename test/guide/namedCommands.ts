import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { marked, type Token, type Tokens } from 'marked';
import { BENCHES } from '../bench/benches.ts';
import { documents } from '../built/documents/fences.ts';
import { saidAgainst } from '../cli/parsedOnly.ts';
import { shellWords } from '../cli/shellWords.ts';

const PROJECT = new URL('../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, PROJECT), 'utf8');
const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };

/** What npm does itself. */
const NPM_OWN = ['audit', 'ci', 'pack'];

/** A piece of code within a sentence, and the document that it stands in. */
export interface Named {
  readonly path: string;
  readonly code: string;
}

/** All code within sentences, of documents for users and developers and of what notebooks say. */
export function codeInSentences(): Named[] {
  const others = ['DEVELOPERS.md', 'test/cases/published/README.md'].map((path) => ({
    path,
    text: read(path),
  }));
  const written = [...documents(), ...others].flatMap(({ path, text }) =>
    spansIn(marked.lexer(text)).map((code) => ({ path, code })),
  );
  const said = readdirSync(new URL('notebooks/', PROJECT))
    .filter((name) => name.endsWith('.ts'))
    .flatMap((name) =>
      [...read(`notebooks/${name}`).matchAll(/(?:<code>|\\`|“)((?:npx |npm |drywake )[^<\\”]+)/g)].map(
        ([, code]) => ({ path: `notebooks/${name}`, code }),
      ),
    );
  return [...written, ...said];
}

/** Commands that the program's own messages name. */
export function commandsInMessages(): Named[] {
  return ['src', 'web/src'].flatMap((folder) =>
    readdirSync(new URL(`${folder}/`, PROJECT), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .flatMap((name) =>
        [
          ...withoutComments(read(`${folder}/${name}`)).matchAll(
            /(?:["“]|\\?`)(drywake [a-z]+ [^"”`$|]*?)\\?["”`]/g,
          ),
        ].map(([, code]) => ({ path: `${folder}/${name}`, code })),
      ),
  );
}

const withoutComments = (text: string): string => text.replaceAll(/^\s*(?:\/?\*|\/\/).*$/gm, '');

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

/** Whether code within a sentence is a command, or the end of one. */
export const isCommand = ({ code }: Named): boolean =>
  /^(?:[A-Z_]+=\S+ )*(?:npx|npm|node|drywake|vitest|tsx|bash|sh|git|cd|curl|\.\/|\.ci\/)(?: |run)/.test(
    code,
  ) || /^-- /.test(code);

/**
 * What is wrong with a named command; null where it can be given as it stands. The program's own is read by its parser,
 * an npm script must be there, and so must a bench and every file that is named.
 */
export async function faultOf({ code }: Named, storeFolder: string): Promise<string | null> {
  const words = shellWords(code.replace(/^(?:[A-Z_]+=\S+ )+/, ''));
  const [first, second, ...rest] = words[0] === 'npx' ? words.slice(1) : words;
  if (first === 'drywake')
    return saidAgainst(words[0] === 'npx' ? words.slice(2) : words.slice(1), storeFolder);
  if (first === '--') return benchFault(second);
  if (first === 'npm') {
    if (second !== 'run') return NPM_OWN.includes(second) || second in scripts ? null : `no script ${second}`;
    const [script, dashes, bench] = rest;
    if (!(script in scripts)) return `no script ${script}`;
    return script === 'bench' && dashes === '--' ? benchFault(bench) : null;
  }
  if (first === 'vitest' || first === 'node' || first === 'tsx') return fileFault([second, ...rest]);
  if (first === '.ci/run') return statSync(new URL(first, PROJECT)).mode & 0o100 ? null : 'cannot be run';
  return 'nothing proves that this command works';
}

const benchFault = (name: string): string | null => (name in BENCHES ? null : `no bench ${name}`);

const fileFault = (words: readonly string[]): string | null => {
  const missing = words.find((word) => /[./]/.test(word) && !existsSync(new URL(word, PROJECT)));
  return missing === undefined ? null : `no file ${missing}`;
};
