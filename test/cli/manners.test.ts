import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commandList.ts';
import { createProgressLine } from '../../src/cli/progressLine.ts';
import { realDeps } from '../../src/cli/realDeps.ts';
import { run } from '../../src/cli/run.ts';
import { terminalOf } from '../../src/cli/terminalOf.ts';
import { tempFolder } from '../tempFolder.ts';
import { namesBelow } from './helpOf.ts';
import { runDrywake } from './runDrywake.ts';

const ASKED = [
  ...['odds', '--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil'],
  ...['--applied', '2026-08-14', '--plant', '2027-05-10'],
];

const REGION = ['region', '--residual', 'flumioxazin', '--crop', 'lentil', '--applied', '2026-08-14'].concat([
  ...['--plant', '2027-05-10'],
]);

describe('help', () => {
  it('has an example at every command and at every one below it', async () => {
    const folder = tempFolder();
    const help = async (argv: readonly string[]) => {
      const { code, out, err } = await runDrywake([...argv, '--help'], folder);
      expect([code, err], argv.join(' ')).toEqual([0, '']);
      expect(out, argv.join(' ')).toMatch(/^Examples?:\n {2}drywake /m);
      return out;
    };
    const seen: string[] = [];
    await help([]);
    for (const { name } of COMMANDS) {
      seen.push(name);
      await help([name]);
      for (const sub of await namesBelow([name], folder)) {
        seen.push(`${name} ${sub}`);
        await help([name, sub]);
      }
    }
    expect(seen).toContain('fields undo');
    expect(seen).toContain('weather near');
    expect(seen.length).toBeGreaterThan(35);
  });

  it('is the same by "help odds" as by "odds --help"', async () => {
    const folder = tempFolder();
    const { out } = await runDrywake(['help', 'odds'], folder);
    expect(out).toContain('--residual <name>');
    expect(out).toContain('Examples:');
  });
});

describe('a slip of the hand', () => {
  it.each([
    ['a command', ['odd'], 'Did you mean odds?'],
    ['a command below one', ['weather', 'imprt'], 'Did you mean import?'],
    ['a command whose help is asked for', ['help', 'weathr'], 'Did you mean weather?'],
    ['a command below one whose help is asked for', ['weather', 'help', 'imprt'], 'Did you mean import?'],
    ['a flag', [...ASKED, '--limt', '0.1'], 'Did you mean --limit?'],
    ['a residual', [...ASKED, '--residual', 'flumioxazine'], 'Did you mean flumioxazin?'],
    ['a crop', [...ASKED, '--crop', 'lentl'], 'Did you mean lentil?'],
    ['an assumption', [...ASKED, '--assume', 'soilSpred=0.5'], 'Did you mean soilSpread?'],
    ['an active of the catalogue', ['catalogue', 'show', 'imazethapir'], 'Did you mean imazethapyr?'],
    ['a soil', [...ASKED, '--soil', 'lom'], 'Did you mean loam? Allowed choices are sand, loamy sand'],
    ['a station', [...ASKED, '--station', 'demo-inventd'], 'Did you mean demo-invented? Stations to be had'],
    ['the station of a check', ['weather', 'check', 'demo_invent'], 'Did you mean demo-invented?'],
    ['units', [...ASKED, '--units', 'metrc'], 'Did you mean metric? Allowed choices are us, metric'],
    ['a country', [...ASKED, '--country', 'CAN'], 'Did you mean CA? Allowed choices are US, CA'],
    ['a use', [...ASKED, '--stand-use', 'grazd'], 'Did you mean grazed?'],
    ['units of a file', ['weather', 'import', 'x.csv', '--units-in', 'tenth'], 'Did you mean tenths?'],
    ['what a bioassay gave', [...ASKED, '--bioassay', '2027-04-01=injurd'], 'Did you mean injured?'],
    ['a crop sprayed over', [...ASKED, '--growth-stage', 'cereal=31'], 'Did you mean cereals?'],
    ['a moisture response', [...ASKED, '--assume', 'moistureResponse=walkr'], 'Did you mean walker?'],
    ['a key of a treatment', [...ASKED, '--also', '2026-05-01=atrazine,rte=0.5'], 'Did you mean rate?'],
    ['the letters of a state', [...REGION, '--state', 'TM'], 'Did you mean MT?'],
    ['the name of a state', [...REGION, '--state', 'Montana'], 'Write the two letters of each state'],
    ['the letters behind a county', ['weather', 'near', '--county', 'Gallatin, TM'], 'Did you mean MT?'],
    ['the state behind a county', ['weather', 'near', '--county', 'Gallatin, Montanna'], 'mean Montana?'],
    ['a county', ['weather', 'near', '--county', 'Galatin, MT'], 'Names like it: Gallatin, MT'],
  ])('in %s is met with what may have been meant', async (_, argv, told) => {
    const { code, out, err } = await runDrywake(argv, tempFolder());
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(told);
    expect(err).not.toMatch(/\n\s+at /);
  });
});

describe('a slip in an id or in a file', () => {
  const told = async (argv: readonly string[], folder: string) => {
    const { code, out, err } = await runDrywake(argv, folder);
    return [code, out + err];
  };

  it('is met with the id of the field or label entry that is kept', async () => {
    const folder = tempFolder();
    const fields = join(folder, 'fields.csv');
    writeFileSync(fields, 'farm,field,station,sol_class\nInvented,Home,demo-invented,loam\n');
    const [, read] = await told(['fields', 'import', fields], folder);
    expect(read).toContain('passed over. Did you mean soil_class?');
    for (const argv of [
      ['fields', 'show', 'invented-hom'],
      ['fields', 'undo', 'inventd-home'],
      ['sheet', '--field', 'invented-hoem'],
    ]) {
      expect(await told(argv, folder)).toEqual([2, expect.stringContaining('Did you mean invented-home?')]);
    }
    const labels = join(folder, 'labels.csv');
    writeFileSync(
      labels,
      'name,label_version,entered_on,active_1,crop,interval\nShed,invented,2026-07-01,flumioxazin,lentil,4 months\n',
    );
    expect(await told(['labels', 'import', labels], folder)).toEqual([0, 'shed: new\n']);
    for (const argv of [
      ['labels', 'show', 'shd'],
      [...ASKED, '--label-entry', 'shd'],
    ]) {
      expect(await told(argv, folder)).toEqual([2, expect.stringContaining('Did you mean shed?')]);
    }
  });

  it('is met with the soil that was probably meant', async () => {
    const folder = tempFolder();
    const soils = join(folder, 'soils.csv');
    writeFileSync(soils, 'station,soil_class\ndemo-invented,clay lom\n');
    expect((await told([...REGION, '--soils', soils], folder))[1]).toContain('Did you mean clay loam?');
  });
});

describe('the terminal', () => {
  const streams = (isTTY: boolean) => {
    const written: string[] = [];
    const stream = { isTTY, write: (text: string) => written.push(text) };
    return { written, both: { stdout: stream, stderr: stream } };
  };

  it('gets colour only where the output is one and NO_COLOR is not set', () => {
    const { both } = streams(true);
    expect(terminalOf(both, {}).colour).toBe(true);
    expect(terminalOf(both, { NO_COLOR: '' }).colour).toBe(true);
    expect(terminalOf(both, { NO_COLOR: '1' }).colour).toBe(false);
    expect(terminalOf(streams(false).both, {}).colour).toBe(false);
  });

  it('colours the same words', async () => {
    const { written, both } = streams(true);
    const terminal = terminalOf(both, {});
    expect(
      await run(
        ASKED,
        realDeps(terminal, tempFolder(), async () => undefined),
      ),
    ).toBe(0);
    const coloured = written.join('');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colour is said by control characters
    const codes = /\u001b\[\d+m/g;
    expect(coloured).toMatch(codes);
    const { out } = await runDrywake(ASKED, tempFolder());
    expect(out).not.toMatch(codes);
    expect(coloured.replace(codes, '')).toBe(out);
  });

  it('gets progress on the error stream only where that is one', () => {
    const shown = streams(true);
    const line = createProgressLine(terminalOf(shown.both, {}), 'fields answered');
    line.show(1, 2);
    line.show(2, 2);
    line.end();
    expect(shown.written.join('')).toContain('1 of 2 fields answered, 50 %');
    expect(shown.written.at(-1)).toMatch(/^\r +\r$/);
    const silent = streams(false);
    const none = createProgressLine(terminalOf(silent.both, {}), 'fields answered');
    none.show(1, 2);
    none.end();
    expect(silent.written).toEqual([]);
  });
});
