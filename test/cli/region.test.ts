import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tempFile, tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const run = (...argv: string[]) =>
  runDrywake(
    [
      ...['region', '--residual', 'flumioxazin', '--crop', 'lentil', '--applied', '2026-08-14'],
      ...['--plant', '2027-05-10', '--as-of', '2026-09-30', ...argv],
    ],
    tempFolder(),
  );

describe('drywake region', () => {
  it('prints a line for each station as CSV', async () => {
    const { code, out, err } = await run();
    expect(code).toBe(0);
    const [head, row] = out.trim().split('\n');
    expect(head).toContain('odds_now,odds_normal');
    expect(row).toMatch(/^demo-invented,Larkrise \(invented\),47.2,/);
    expect(err).toContain('1 of 1 stations can answer');
    expect(err).toContain('nothing is drawn between stations');
  });

  it('writes GeoJSON, and takes soils by station', async () => {
    const path = join(tempFolder(), 'region.geojson');
    const soils = tempFile('soils.csv', 'station,soil_class\ndemo-invented,Sand\n');
    await run('--soils', soils, '--out', path);
    const { type, features } = JSON.parse(readFileSync(path, 'utf8'));
    expect(type).toBe('FeatureCollection');
    expect(features[0].properties.soilClass).toBe('sand');
    const wrong = await run('--soils', tempFile('s.csv', 'station,soil_class\ndemo-invented,mud\n'));
    expect([wrong.code, wrong.err.includes('"mud"')]).toEqual([2, true]);
  });

  it('refuses a box that is none and a region without stations', async () => {
    expect((await run('--box', '1,2,3')).code).toBe(2);
    const none = await run('--state', 'mt');
    expect([none.code, none.err.includes('lies in that region')]).toEqual([2, true]);
  });
});
