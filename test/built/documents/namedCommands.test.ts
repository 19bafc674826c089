import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { saidAgainst } from '../../cli/parsedOnly.ts';
import { shellWords } from '../../cli/shellWords.ts';
import { tempFolder } from '../../tempFolder.ts';
import { codeInSentences, isCommand, linesIn, type Named, runnerOf, wholeCommand } from './commands.ts';
import { documents, namedFiles } from './fences.ts';
import { STATION, startRecordService } from './recordService.ts';
import { makeWorkplace, type Workplace } from './workplace.ts';

/** What stands for the reader's own in commands of sentences. */
const PLACEHOLDERS: Readonly<Record<string, string>> = {
  FOLDER: 'folder',
  ID: 'larkrise-invented-home-quarter',
  STATION,
  'KEY=VALUE': 'moistureExponent=0.6',
};
const filled = (code: string): string =>
  code.replaceAll(/\b(?:FOLDER|ID|STATION|KEY=VALUE)\b/g, (name) => PLACEHOLDERS[name]);

/** A server takes any free port. */
const besideOf = (command: string): string => (command.startsWith('npx drywake serve') ? ' --port 0' : '');

const named = codeInSentences();
const commands = named
  .filter(isCommand)
  .map(({ path, code }) => ({ path, code: filled(wholeCommand(code)) }));
const programs = commands.filter(({ code }) => runnerOf(code) === 'program');
const lines = documents()
  .flatMap((document) => linesIn(document))
  .filter(({ code }) => code.startsWith('npx drywake '))
  .map(({ path, code }) => ({ path, code: code.replace(/ [|>] .*$/, '') }));

const isRead = async (code: string): Promise<boolean> =>
  (await saidAgainst(shellWords(code).slice(2), tempFolder())) === null;

/** The first command of a block that a flag can stand behind, of the flag's own document where there is one. */
async function commandFor({ path, code }: Named): Promise<string | null> {
  for (const line of lines.toSorted((a, b) => Number(b.path === path) - Number(a.path === path))) {
    const whole = `${line.code} ${filled(code)}`;
    if (await isRead(whole)) return whole;
  }
  return null;
}

it('every command within a sentence is run, in a user’s folder or in a copy of the project', () => {
  expect(programs.length).toBeGreaterThan(4);
  expect(commands.length).toBeGreaterThan(programs.length);
  expect(commands.filter(({ code }) => runnerOf(code) === null)).toEqual([]);
});

it('a command that nothing runs is told', () => {
  for (const code of [
    'curl http://127.0.0.1:4717/api/health',
    'node program.mjs',
    'npx other thing',
    './run it',
  ])
    expect([isCommand({ path: '', code }), runnerOf(wholeCommand(code))], code).toEqual([true, null]);
});

describe('commands within sentences', () => {
  let service: Awaited<ReturnType<typeof startRecordService>>;
  let place: Workplace;
  beforeAll(async () => {
    service = await startRecordService();
    place = makeWorkplace(namedFiles(), service.address);
    for (const line of ['weather import records/', 'fields import fields.csv', 'labels import labels.csv'])
      expect((await place.run(`npx drywake ${line}`)).code).toBe(0);
  });
  afterAll(() => {
    place.leave();
    service.close();
  });
  const run = async (command: string) => {
    const { code, out, err } = await place.run(command);
    expect([code, code === 0 ? '' : `${command}\n${err}`]).toEqual([0, '']);
    expect(out + err).not.toBe('');
  };

  it.each([...new Set(programs.map(({ code }) => code))])('%s', (command) =>
    run(command + besideOf(command)),
  );

  const flags = named.filter(({ code }) => /^--[a-z]/.test(code) && code !== '--help');
  it.each(flags)('$code, in $path', async (flag) => {
    const command = await commandFor(flag);
    // A flag that stands without the value it wants is a name, and `test/guide/programNames.test.ts` knows it.
    if (command === null) expect(flag.code).toMatch(/^--[a-z-]+$/);
    else await run(command);
  });
});
