import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commandList.ts';
import { codeInSentences, type Named } from '../built/documents/commands.ts';
import { namesBelow, optionsOf } from '../cli/helpOf.ts';
import { saidAgainst } from '../cli/parsedOnly.ts';
import { shellWords } from '../cli/shellWords.ts';
import { tempFolder } from '../tempFolder.ts';

const PROJECT = new URL('../../', import.meta.url);

/** Commands that the program's own messages name. */
const commandsInMessages = (): Named[] =>
  ['src', 'web/src'].flatMap((folder) =>
    readdirSync(new URL(`${folder}/`, PROJECT), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .flatMap((name) => {
        const text = readFileSync(new URL(`${folder}/${name}`, PROJECT), 'utf8');
        const found = withoutComments(text).matchAll(/(?:["“]|\\?`)(drywake [a-z]+ [^"”`$|]*?)\\?["”`]/g);
        return [...found].map(([, code]) => ({ path: `${folder}/${name}`, code }));
      }),
  );

const withoutComments = (text: string): string => text.replaceAll(/^\s*(?:\/?\*|\/\/).*$/gm, '');

it('commands that the program’s own messages name are there', async () => {
  const named = commandsInMessages();
  expect(named.length).toBeGreaterThan(8);
  for (const { path, code } of named)
    expect(await saidAgainst(shellWords(code).slice(1), tempFolder()), `${path}: ${code}`).toBeNull();
});

it('flags that documents name are known to some command', async () => {
  const folder = tempFolder();
  const known = new Set(['--help', '--version']);
  for (const { name } of COMMANDS) {
    for (const flag of await optionsOf([name], folder)) known.add(flag);
    for (const below of await namesBelow([name], folder)) {
      for (const flag of await optionsOf([name, below], folder)) known.add(flag);
    }
  }
  const flags = codeInSentences().filter(({ code }) => /^--[a-z]/.test(code));
  expect(flags.length).toBeGreaterThan(5);
  expect(flags.filter(({ code }) => !known.has(code.split(/[ =]/)[0]))).toEqual([]);
});

it('a command line is read without doing any of it', async () => {
  const folder = tempFolder();
  expect(await saidAgainst(['serve', '--port', '4717'], folder)).toBeNull();
  expect(await saidAgainst(['serve', '--port', 'many'], folder)).toContain('whole number');
  expect(await saidAgainst(['fields', 'show'], folder)).toContain("missing required argument 'id'");
});
