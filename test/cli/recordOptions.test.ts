import { describe, expect, it } from 'vitest';
import { tempFile, tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const ODDS = ['odds', '--residual', 'flumioxazin', '--crop', 'lentil', '--interval', '9 months'];
const gauge = () => tempFile('gauge.csv', 'Date,Rain,High,Low\n3/4/2020,0.25,71,51\n5/6/2020,0.75,70,50\n');
const said = ['--units-in', 'us', '--dates', 'month-first', '--as-station', 'my-gauge'];

describe('what the user says about files', () => {
  it('is asked for one thing after the other, in the words of the options', async () => {
    const path = gauge();
    const check = (...more: string[]) =>
      runDrywake(['weather', 'check', 'my-gauge', '--weather', path, ...more], tempFolder());
    const first = await check();
    expect(first.code).toBe(2);
    expect(first.err).toContain('--as-station gauge');
    expect((await check(...said.slice(4))).err).toContain('--dates day-first or --dates month-first');
    expect((await check(...said.slice(2))).err).toContain('--units-in us (inches and °F)');
    const { code, out } = await check(...said);
    expect(code).toBe(0);
    expect(out).toContain('2020-03-04 to 2020-05-06');
    expect(out).toContain('gauge.csv: Values taken as inches and °F, as declared.');
    expect(out).toContain('gauge.csv: Dates read month-first, as declared.');
  });

  it('holds for an import, whose lines and JSON give the notes', async () => {
    const folder = tempFolder();
    const { code, out, err } = await runDrywake(['weather', 'import', gauge(), ...said, '--json'], folder);
    expect(code).toBe(0);
    expect(err).toContain('\n    Dates read month-first, as declared.\n');
    const [station] = JSON.parse(out).files[0].stations;
    expect(station).toMatchObject({ stationId: 'my-gauge', firstDate: '2020-03-04' });
    expect(station.notes).toContain('gauge.csv: Values taken as inches and °F, as declared.');
  });

  it('holds for odds straight from files', async () => {
    const ask = (...more: string[]) =>
      runDrywake(
        [
          ...ODDS,
          '--applied',
          '2020-03-05',
          '--plant',
          '2021-05-10',
          '--station',
          'my-gauge',
          '--lat',
          '45.6',
        ]
          .concat(['--weather', gauge()])
          .concat(more),
        tempFolder(),
      );
    expect((await ask()).err).toContain('--as-station gauge');
    // Named and read; two days of rain then are too few for any answer.
    expect((await ask(...said)).err).toContain(
      'The record of my-gauge has parts of the year without any rain value',
    );
  });

  it('is refused where it cannot be', async () => {
    const { code, err } = await runDrywake(
      ['weather', 'import', gauge(), '--as-station', 'my gauge'],
      tempFolder(),
    );
    expect(code).toBe(2);
    expect(err).toContain('A station id holds letters, digits, "-" and "_" only.');
  });
});
