import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { describeWithRecords } from '../sharedWeather.ts';
import { writeYears } from '../store/yearFiles.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

it('lists the demo where nothing has been imported, and makes no store for it', async () => {
  const store = join(tempFolder(), 'none');
  const { code, out } = await runDrywake(['weather', 'list'], store);
  expect(code).toBe(0);
  expect(out).toMatch(/demo-invented .* invented/);
  expect(() => readdirSync(store)).toThrow();
});

it('imports the examples, lists and checks them', async () => {
  const store = tempFolder();
  const { code, err } = await runDrywake(['weather', 'import', '--example'], store);
  expect(code).toBe(0);
  expect(err).toMatch(/\[2\/2\].*example-new-york, 2012-01-01 to 2015-12-31; 4383 values new/);
  const again = await runDrywake(['weather', 'import', '--example'], store);
  expect(again.err).toMatch(/0 values new, 0 replaced/);
  const { stations } = JSON.parse((await runDrywake(['weather', 'list', '--json'], store)).out);
  expect(stations.map(({ id }: { id: string }) => id)).toEqual([
    'demo-invented',
    'example-new-york',
    'example-seattle',
  ]);
  const check = await runDrywake(['weather', 'check', 'example-seattle'], store);
  expect(check.out).toMatch(/Mean yearly rain +43\.\d in over 4 years/);
});

it('names the damaged file, line and column, imports the others, and ends with 2', async () => {
  const store = tempFolder();
  const folder = tempFolder();
  writeFileSync(
    join(folder, 'GOOD0000001.csv'),
    'GOOD0000001,20200101,PRCP,12,,,N,\nGOOD0000001,20200102,PRCP,0,,,N,\n',
  );
  writeFileSync(
    join(folder, 'DAMAGED0001.csv'),
    'DAMAGED0001,20200101,PRCP,12,,,N,\nDAMAGED0001,20200102,PRCP,x,,,N,\n',
  );
  const { code, err } = await runDrywake(['weather', 'import', folder], store);
  expect(code).toBe(2);
  expect(err).toMatch(/DAMAGED0001\.csv: .*line 2/);
  const { stations } = JSON.parse((await runDrywake(['weather', 'list', '--json'], store)).out);
  expect(stations.map(({ id }: { id: string }) => id)).toEqual(['GOOD0000001', 'demo-invented']);
});

it('asks for something to import', async () => {
  const { code, err } = await runDrywake(['weather', 'import'], tempFolder());
  expect(code).toBe(2);
  expect(err).toContain('--example');
});

describeWithRecords('a real record through the store', (folder) => {
  it('gives the same answer as straight from its file', async () => {
    const store = tempFolder();
    const path = `${folder}/derived/USC00241044.dly.gz`;
    expect((await runDrywake(['weather', 'import', path], store)).code).toBe(0);
    const question = [
      ...[
        'odds',
        '--station',
        'USC00241044',
        '--lat',
        '45.662',
        '--residual',
        'imazethapyr',
        '--crop',
        'lentil',
      ],
      ...['--interval', '9 months', '--applied', '2020-08-10', '--plant', '2021-05-10', '--json', '--season'],
    ];
    const stored = JSON.parse((await runDrywake(question, store)).out);
    const straight = JSON.parse((await runDrywake([...question, '--weather', path], store)).out);
    expect(stored.oddsAtPlanting).toBeGreaterThan(0);
    expect(stored).toEqual(straight);
  });
});

it('passes over what has not changed, suggests to compact, and compacts', async () => {
  const store = tempFolder();
  const files = writeYears(tempFolder(), [2001, 2002]);
  const first = await runDrywake(['weather', 'import', ...files], store);
  expect(first.out).toBe('2 of 2 imported.\n');
  expect(first.err).toContain('`drywake weather compact` brings them together');
  const again = await runDrywake(['weather', 'import', ...files], store);
  expect(again.out).toBe('0 of 2 imported, 2 unchanged since they were.\n');
  expect((await runDrywake(['weather', 'import', '--again', files[0]], store)).err).toMatch(
    /4 stations; 0 values new, 0 replaced/,
  );
  const compacted = await runDrywake(['weather', 'compact', '--json'], store);
  expect(JSON.parse(compacted.out)).toEqual({ rows: 4 * 2 * 181, scatteredFiles: 1 });
});
