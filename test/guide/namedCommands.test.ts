import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commandList.ts';
import { namesBelow, optionsOf } from '../cli/helpOf.ts';
import { saidAgainst } from '../cli/parsedOnly.ts';
import { tempFolder } from '../tempFolder.ts';
import { codeInSentences, commandsInMessages, faultOf, isCommand, type Named } from './namedCommands.ts';

const faultsOf = async (named: readonly Named[], folder: string) => {
  const faults: string[] = [];
  for (const one of named) {
    const fault = await faultOf(one, folder);
    if (fault !== null) faults.push(`${one.path}: ${one.code}: ${fault.trim()}`);
  }
  return faults;
};

describe('a command that is named within a sentence', () => {
  it('can be given as it stands: blocks are run, these are read by the parser or looked up', async () => {
    const named = codeInSentences().filter(isCommand);
    expect(named.length).toBeGreaterThan(20);
    expect(new Set(named.map(({ path }) => path))).toContain('DEVELOPERS.md');
    expect(await faultsOf(named, tempFolder())).toEqual([]);
  });

  it('is refused where nothing proves it', async () => {
    const path = 'a document';
    const codes = [
      ...['npx drywake oods', 'drywake weather import --unit-in us', 'drywake odds --soil lom'],
      ...[
        'npm run benches',
        'npm run bench -- soaking',
        'npm begin',
        'npx vitest run test/nowhere',
        '-- many-more',
      ],
      ...['curl http://127.0.0.1:4717/api/health', 'drywake weather export --parquet'],
    ];
    for (const code of codes) expect(isCommand({ path, code }), code).toBe(true);
    const named = codes.map((code) => ({ path, code }));
    expect(await faultsOf(named, tempFolder())).toHaveLength(codes.length);
  });

  it('has flags that some command knows', async () => {
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

  it('is one that is there, in the program’s own messages too', async () => {
    const named = commandsInMessages();
    expect(named.length).toBeGreaterThan(8);
    expect(await faultsOf(named, tempFolder())).toEqual([]);
  });
});

it('a command line is read without doing any of it', async () => {
  const folder = tempFolder();
  expect(await saidAgainst(['serve', '--port', '4717'], folder)).toBeNull();
  expect(await saidAgainst(['serve', '--port', 'many'], folder)).toContain('whole number');
  expect(await saidAgainst(['fields', 'show'], folder)).toContain("missing required argument 'id'");
});
