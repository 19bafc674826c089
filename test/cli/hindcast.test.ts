import { describe, expect, it } from 'vitest';
import { hindcastSchema } from '../../src/schema/hindcast.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';
import { tickingClock } from '../store/openFields.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const ask = (...more: string[]) => askIn(tempFolder(), ...more);
const askIn = (folder: string, ...more: string[]) =>
  runDrywake(
    [
      ...[
        'hindcast',
        '--workers',
        '0',
        '--station',
        'demo-invented',
        '--residual',
        'flumioxazin',
        '--crop',
        'lentil',
      ],
      ...['--applied', '2026-08-14', '--plant', '2027-05-10', '--base', '1990-2019', ...more],
    ],
    folder,
  );

describe('drywake hindcast', () => {
  it('prints scores by lead, bands of odds and what they test', async () => {
    const { code, out, err } = await ask();
    expect(code).toBe(0);
    expect(out).toMatch(/^Over 30 past years, residue would have harmed in/);
    expect(out).toContain('weather part of the odds only');
    expect(out).toMatch(/^180 {10}/m);
    expect(out).toMatch(/^Model: drywake residual persistence, version \d+\.\d+\.\d+\.$/m);
    expect(err).toBe('');
  });

  it('gives it all as JSON, unrounded', async () => {
    const { out } = await ask('--leads', '90,400', '--json');
    const { years, leads, soilsPerYear, recorded } = hindcastSchema.parse(JSON.parse(out));
    expect(years.length).toBe(30);
    expect(recorded).toMatchObject({ counted: 0, leftOut: [] });
    expect(soilsPerYear).toBe(20);
    expect(leads.map(({ leadDays, plan }) => [leadDays, plan])).toEqual([
      [90, false],
      [400, true],
    ]);
    for (const { probability, harmed } of years)
      expect(Math.abs(harmed - probability * 20)).toBeLessThanOrEqual(0.5);
  });

  it('tallies the outcomes of kept fields beside it', async () => {
    const folder = tempFolder();
    const store = await openFieldsStore(folder, { now: tickingClock() });
    const plans = [{ id: 'a', crop: 'lentil', plantOn: '2021-05-10' }];
    const treatments = [{ id: 't', appliedOn: '2020-08-14', residual: 'flumioxazin' }];
    const outcomes = [
      { on: '2021-06-20', crop: 'lentil', state: 'injured' as const },
      { on: '2021-06-20', crop: 'pea', state: 'clean' as const },
    ];
    await store.fields.put(fieldOf({ plans, treatments, outcomes, evidence: [], gauge: [] }), null);
    await store.close();
    const { out } = await askIn(folder);
    expect(out).toMatch(
      /In kept fields\nOf 1 crop looked at in fields, 1 was hurt; the odds had said 0\.\d\./,
    );
    expect(out).toMatch(/^Left out: Larkrise \(invented\), Home quarter, pea looked at on 2021-06-20\. No/m);
  });

  it('refuses too short a base period, a mix, and a residual without carryover', async () => {
    const short = await ask('--base', '1990-1999');
    expect(short.code).toBe(2);
    expect(short.err).toContain('looking back needs at least 11');
    const mix = await ask('--crop', 'lentil + pea');
    expect(mix.err).toContain('one crop at a time');
    const none = await ask('--residual', 'glyphosate', '--interval', '0 days');
    expect(none.code).toBe(2);
    expect(none.err).toContain('no odds to look back on');
  });
});
