import { join } from 'node:path';
import { expect, it } from 'vitest';
import { stationCheckSchema } from '../../src/schema/stationCheck.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

describeWithRecords('a real station, imported and checked', (shared) => {
  // Counted by a line-by-line script: 9552 accepted rain values at 1800, then 9932 at 1700 from 1991-06-02 on.
  it('says when its rain was read and when that changed, as text and as JSON', async () => {
    const store = tempFolder();
    const path = join(shared, 'derived', 'USC00026716.csv.gz');
    expect((await runDrywake(['weather', 'import', path], store)).code).toBe(0);
    const { out } = await runDrywake(['weather', 'check', 'USC00026716'], store);
    expect(out).toContain(
      'Rain read at          18:00 from 1965-03-01 to 1991-06-01 (9552 readings)\n                      17:00 from 1991-06-02 to 2021-09-01 (9932 readings)\n',
    );
    expect(out).toMatch(/^Station +USC00026716\n/);
    const asJson = JSON.parse((await runDrywake(['weather', 'check', 'USC00026716', '--json'], store)).out);
    expect(stationCheckSchema.parse(asJson).changes.observationTime).toMatchObject({
      periods: [
        { time: '18:00', lastDate: '1991-06-01', readings: 9552 },
        { time: '17:00', firstDate: '1991-06-02', readings: 9932 },
      ],
      exceptions: 0,
      knownDays: 19_484,
    });
  });
});

it('normals and near take files that do not say their units', async () => {
  const days = Array.from(
    { length: 28 },
    (_, day) => `TST1,45.5,-110.25,1320,2020-02-${String(day + 1).padStart(2, '0')},1\n`,
  );
  const path = tempFile('plain.csv', `STATION,LATITUDE,LONGITUDE,ELEVATION,DATE,PRCP\n${days.join('')}`);
  const near = ['weather', 'near', '--lat', '45.5', '--lon', '-110', '--weather', path];
  const open = await runDrywake(near, tempFolder());
  expect([open.code, open.err]).toEqual([2, expect.stringContaining('--units-in')]);
  const { out, code } = await runDrywake([...near, '--units-in', 'metric', '--json'], tempFolder());
  expect(code).toBe(0);
  expect(JSON.parse(out).stations[0]).toMatchObject({ id: 'TST1' });
  const normals = ['weather', 'normals', 'TST1', '--from', '02-01', '--to', '02-10', '--weather', path];
  const { err } = await runDrywake([...normals, '--units-in', 'metric'], tempFolder());
  expect(err).toContain('The record of TST1 has 1 usable year for this window');
});

it('says how far and which way a station moved, and names no driest year where none is complete', async () => {
  const store = tempFolder();
  const rows = (place: string, month: string) =>
    Array.from(
      { length: 20 },
      (_, day) => `TST1,${place},2020-${month}-${String(day + 1).padStart(2, '0')},1\n`,
    );
  const head = 'STATION,LATITUDE,LONGITUDE,ELEVATION,DATE,PRCP\n';
  const files = [
    tempFile('first.csv', `${head}${rows('45.5,-110.25,1320', '02').join('')}`),
    tempFile('second.csv', `${head}${rows('45.51,-110.236,1300', '03').join('')}`),
    tempFile('third.csv', `${head}${rows('45.51,-110.236,1330', '04').join('')}`),
  ];
  for (const path of files) {
    expect((await runDrywake(['weather', 'import', path, '--units-in', 'metric'], store)).code).toBe(0);
  }
  const { out } = await runDrywake(['weather', 'check', 'TST1'], store);
  expect(out).toMatch(
    /^Moved +0\.97 mi north-east, 66 ft lower, by second\.csv\n +hardly any way, 98 ft higher, by third\.csv$/m,
  );
  expect((await runDrywake(['weather', 'check', 'TST1', '--units', 'metric'], store)).out).toMatch(
    /^Moved +1\.56 km north-east, 20 m lower, by second\.csv\n +hardly any way, 30 m higher, by third\.csv$/m,
  );
  expect(out).toMatch(/^Mean yearly rain +no year is complete enough\nLongest gaps/m);
  const { changes } = JSON.parse((await runDrywake(['weather', 'check', 'TST1', '--json'], store)).out);
  expect(changes.formerPositions).toMatchObject([
    { latitudeDeg: 45.5, movedTowards: 'north-east', raisedM: -20, replacedBy: 'second.csv' },
    { latitudeDeg: 45.51, movedKm: 0, movedTowards: null, raisedM: 30, replacedBy: 'third.csv' },
  ]);
});
