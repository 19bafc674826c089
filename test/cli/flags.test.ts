import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Command as Program } from 'commander';
import { afterAll, describe, expect, it } from 'vitest';
import type { CliDeps } from '../../src/cli/command.ts';
import { COMMANDS } from '../../src/cli/commandList.ts';
import { realDeps } from '../../src/cli/realDeps.ts';
import { run } from '../../src/cli/run.ts';
import { SourceFailedError } from '../../src/errors.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import fc from '../fastCheck.ts';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { SOUND } from '../fixtures/hostile/damagedFiles.ts';
import { HOSTILE } from '../http/arbitraryOf.ts';
import { tickingClock } from '../store/openFields.ts';
import { tempFolderOfFile } from '../tempFolder.ts';

const RUNS = Number(process.env.FUZZ_RUNS ?? 12);

// Names without a folder are taken from where the program runs, so it runs in a folder of its own, some way down.
const outer = tempFolderOfFile();
const home = join(outer, 'a', 'b', 'home');
const store = join(outer, 'store');
mkdirSync(home, { recursive: true });
for (const [name, text] of Object.entries(SOUND)) writeFileSync(join(home, name), text);
const began = process.cwd();
process.chdir(home);
afterAll(() => process.chdir(began));
const fields = await openFieldsStore(store, { now: tickingClock() });
await fields.fields.put(fieldOf(), null);
await fields.labels.put(labelOf(), null);
await fields.close();

let said = '';
const terminal = {
  out: () => undefined,
  err: (text: string) => {
    said += text;
  },
  interactive: false,
  colour: false,
};
/** All that is real, but for the public service, which a test does not ask. */
const deps: CliDeps = {
  ...realDeps(terminal, store, async () => undefined),
  async recordsService() {
    throw new SourceFailedError('FETCH_REFUSED', 'This test fetches nothing.');
  },
};

/** A command that does something by itself, with the words that lead to it. */
interface Leaf {
  readonly words: readonly string[];
  readonly command: Program;
}

async function leaves(): Promise<Leaf[]> {
  const found: Leaf[] = [];
  const walk = (command: Program, words: readonly string[]) => {
    if (command.commands.length === 0) found.push({ words, command });
    for (const inner of command.commands) walk(inner, [...words, inner.name()]);
  };
  for (const { name, load } of COMMANDS) {
    const command = new Program(name);
    (await load()).define(command, deps);
    walk(command, [name]);
  }
  return found;
}

/** Values that fit where they are looked for, so that a run comes further than to its first refusal. */
const WORDS = [
  ...['demo-invented', 'flumioxazin', 'lentil', '2026-08-14', '2027-05-10', '2026-09-30', '9 months'],
  ...['home-quarter', 'shed-one', 'stubble', 'us', 'metric', 'json', '46.5', '0.5', '1', '0', '40,35,25'],
  ...['1981-2018', '2026-07-04=25', '-116,44,-96,49', 'MT', 'out.csv', 'out.json', 'out.parquet'],
  ...Object.keys(SOUND),
];
const hostile = HOSTILE.map((value) => (typeof value === 'string' ? value : (JSON.stringify(value) ?? '')));
const wild = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...WORDS) },
  { weight: 3, arbitrary: fc.constantFrom(...hostile) },
  { weight: 1, arbitrary: fc.string({ maxLength: 20, unit: 'grapheme' }) },
);
/** What goes with questions, for most runs to be about one. */
const ANSWERABLE: Readonly<Record<string, string>> = {
  '--station': 'demo-invented',
  '--residual': 'flumioxazin',
  '--crop': 'lentil',
  '--applied': '2026-08-14',
  '--plant': '2027-05-10',
};
/** More threads than the machine has would only take time. */
const ONLY: Readonly<Record<string, readonly string[]>> = {
  '--workers': ['0', '-1', '1.5', '100000'],
  '--port': ['0', '-1', 'x', '70000'],
};

/** What is written goes where its user says, so these are not told to leave the folder: the rest must not. */
const WRITES = ['--out', '--parquet'];
const inside = wild.filter((text) => !text.includes('..') && !text.startsWith('/'));

function lineOf({ words, command }: Leaf): fc.Arbitrary<string[]> {
  const options = command.options.map((option) => {
    const flag = option.long ?? option.short ?? '';
    const value = ONLY[flag]
      ? fc.constantFrom(...ONLY[flag])
      : option.argChoices
        ? fc.oneof(fc.constantFrom(...option.argChoices), wild)
        : WRITES.includes(flag)
          ? inside
          : wild;
    return option.required || option.optional
      ? value.map((text) => [`${flag}=${text}`])
      : fc.constant([flag]);
  });
  const sound = command.options
    .filter(({ long }) => long !== undefined && long in ANSWERABLE)
    .map(({ long }) => `${long}=${ANSWERABLE[long ?? '']}`);
  const workers = command.options.some(({ long }) => long === '--workers') ? ['--workers=0'] : [];
  const some = fc
    .subarray(options, { maxLength: Math.min(4, options.length) })
    .chain((chosen) => fc.tuple(...chosen));
  const given = fc.array(wild, { maxLength: command.registeredArguments.length + 1 });
  return fc
    .tuple(fc.boolean(), some, given)
    .map(([whole, flags, args]) => [...words, ...(whole ? sound : []), ...workers, ...flags.flat(), ...args]);
}

const everything = await leaves();

describe('every command, with what its flags allow and what they do not', () => {
  it.each(everything.map((leaf) => [leaf.words.join(' '), leaf] as const))('%s', async (_, leaf) => {
    await fc.assert(
      fc.asyncProperty(lineOf(leaf), async (line) => {
        said = '';
        const code = await run(line, deps);
        expect([0, 1, 2]).toContain(code);
        expect(said).not.toContain('Something went wrong');
        expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
        expect(process.exitCode).toBeUndefined();
      }),
      { numRuns: RUNS },
    );
    expect(readdirSync(outer).sort()).toEqual(['a', 'store']);
    expect(readdirSync(join(outer, 'a'))).toEqual(['b']);
    expect(readdirSync(join(outer, 'a', 'b'))).toEqual(['home']);
  });
});
