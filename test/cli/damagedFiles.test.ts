import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DrywakeError } from '../../src/errors.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { DAMAGED_FILES, SOUND } from '../fixtures/hostile/damagedFiles.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const TREATMENT = ['--residual', 'flumioxazin', '--crop', 'lentil', '--applied', '2026-08-14'];
const ODDS = ['odds', '--station', 'demo-invented', ...TREATMENT, '--plant', '2027-05-10'];

/** The commands that take a file of each kind; weather records are tried apart. */
const COMMANDS: Readonly<Record<string, (path: string) => string[][]>> = {
  'gauge.csv': (path) => [[...ODDS, '--as-of', '2026-09-10', '--gauge', path]],
  'fields.csv': (path) => [['fields', 'import', path]],
  'labels.csv': (path) => [['labels', 'import', path]],
  'list.csv': (path) => [['batch', path, '--residual', 'flumioxazin', '--workers', '0']],
  'question.json': (path) => [
    ['odds', '--question', path],
    ['fields', 'restore', path, '--replace'],
  ],
};
const RECORDS = Object.keys(SOUND).filter((kind) => !(kind in COMMANDS) || kind === 'gauge.csv');

/** Files of one kind, each under a name of its own in a folder. */
function damagedIn(folder: string, kind: string): { readonly path: string; readonly damage: string }[] {
  mkdirSync(folder);
  return DAMAGED_FILES.filter(({ name }) => name === kind).map(({ damage, content }, number) => {
    const path = join(folder, `${number}-${kind}`);
    writeFileSync(path, content);
    return { path, damage };
  });
}

describe.each(Object.keys(COMMANDS))('%s', (kind) => {
  it('with any damage is taken or refused in words', async () => {
    const outer = tempFolder();
    const files = damagedIn(join(outer, 'given'), kind);
    mkdirSync(join(outer, 'store'));
    const codes = new Set<number>();
    for (const { path, damage } of files) {
      for (const argv of COMMANDS[kind](path)) {
        const { code, err } = await runDrywake(argv, join(outer, 'store'));
        expect(err, damage).not.toContain('Something went wrong');
        codes.add(code);
      }
      expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
    }
    expect(codes).toEqual(new Set([0, 2]));
    expect(readdirSync(outer).sort()).toEqual(['given', 'store']);
    expect(readdirSync(join(outer, 'given'))).toHaveLength(files.length);
  });
});

describe.each(RECORDS)('%s as a record', (kind) => {
  it('with any damage is read or refused in words, from the file as by an import', async () => {
    const outer = tempFolder();
    const files = damagedIn(join(outer, 'given'), kind);
    const outcomes = new Set<string>();
    for (const { path, damage } of files) {
      await createFileReader([path], { station: 'own' })
        .stations()
        .then(
          () => outcomes.add('read'),
          (error) => {
            expect(error, damage).toBeInstanceOf(DrywakeError);
            outcomes.add('refused');
          },
        );
    }
    const argv = ['weather', 'import', join(outer, 'given'), '--as-station', 'own', '--json'];
    const { code, out, err } = await runDrywake(argv, join(outer, 'store'));
    expect([0, 2]).toContain(code);
    expect(err).not.toContain('Something went wrong');
    if (kind.endsWith('.txt')) return;
    expect([...outcomes].sort()).toEqual(['read', 'refused']);
    expect(JSON.parse(out).files).toHaveLength(files.length);
    expect(readdirSync(outer).sort()).toEqual(['given', 'store']);
  });
});

it('a damaged station list takes no record with it unless it says where it broke', async () => {
  const folder = tempFolder();
  writeFileSync(join(folder, 'record.dly'), SOUND['fixed-width.dly']);
  for (const { damage, content } of DAMAGED_FILES.filter(({ name }) => name === 'ghcnd-stations.txt')) {
    writeFileSync(join(folder, 'ghcnd-stations.txt'), content);
    const read = createFileReader([folder]).stations();
    const found = await read.catch((error: unknown) => error);
    if (found instanceof DrywakeError) expect(found.message, damage).toContain('ghcnd-stations.txt');
    else expect(found, damage).toHaveLength(1);
  }
});
