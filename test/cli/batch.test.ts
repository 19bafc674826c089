import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { batchSchema } from '../../src/schema/batch.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const LIST = `field,acres,station,crop,applied_on,plant_on
North,160,demo-invented,lentil,2026-08-14,2027-05-10
Nowhere,80,nowhere,lentil,2026-08-14,2027-05-10
`;
const run = (...argv: string[]) => runDrywake(['batch', ...argv], tempFolder());

describe('drywake batch', () => {
  it('prints a template and what its columns mean', async () => {
    const { out } = await run('--template');
    expect(out.split('\n')[0]).toMatch(/^field,acres,hectares,station,residual,crop,applied_on,plant_on,/);
    expect((await run('--columns')).out).toContain('soil_ph');
    expect((await run(tempFile('t.csv', out))).code).toBe(0);
  });

  it('answers a file as CSV, the rest on the error stream', async () => {
    const { code, out, err } = await run(tempFile('f.csv', LIST), '--residual', 'flumioxazin');
    expect(code).toBe(0);
    const [head, first, second] = out.trim().split('\n');
    expect(head.startsWith('field,acres,station,crop,applied_on,plant_on,rank,odds_at_planting')).toBe(true);
    expect(first).toMatch(/^North,160,demo-invented,lentil,2026-08-14,2027-05-10,1,0\.\d+,about \d+ in 20/);
    expect(second).toContain('There is no record of a station');
    expect(err).toContain('1 answered, 1 not');
    expect(err).not.toContain('fields answered');
    expect(err).toMatch(/^Model: drywake residual persistence, version \d+\.\d+\.\d+\.$/m);
  });

  it('writes JSON and refuses an ending that says nothing before any work', async () => {
    const path = join(tempFolder(), 'answers.json');
    const list = tempFile('f.csv', LIST);
    await run(list, '--residual', 'flumioxazin', '--out', path);
    const { rows } = batchSchema.parse(JSON.parse(readFileSync(path, 'utf8')));
    expect(rows.length).toBe(2);
    const wrong = await run(list, '--residual', 'flumioxazin', '--out', 'answers.doc');
    expect([wrong.code, wrong.err.includes('.parquet')]).toEqual([2, true]);
    expect((await run()).code).toBe(2);
    expect((await run('/nowhere.csv')).code).toBe(2);
  });
});
