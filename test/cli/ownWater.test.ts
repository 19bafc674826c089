import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const QUESTION = [
  ...['odds', '--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil'],
  ...['--interval', '9 months', '--applied', '2026-07-01', '--plant', '2027-05-10', '--as-of', '2026-09-15'],
  '--json',
];

describe('water of one’s own in a question', () => {
  const ask = async (store: string, ...more: string[]) => {
    const { code, out, err } = await runDrywake([...QUESTION, ...more], store);
    expect(err).toBe('');
    expect(code).toBe(0);
    return JSON.parse(out);
  };
  const codes = ({ cautions }: { cautions: { code: string }[] }) => cautions.map(({ code }) => code);

  it('counts: a dry gauge raises the odds, irrigation lowers them, and both are shown', async () => {
    const store = tempFolder();
    const plain = await ask(store);
    const days = Array.from({ length: 31 }, (_, day) => `2026-07-${String(day + 1).padStart(2, '0')}`);
    const dryGauge = join(store, 'dry.csv');
    writeFileSync(dryGauge, `date,rain_mm\n${days.map((date) => `${date},0`).join('\n')}\n`);
    const dry = await ask(store, '--gauge', dryGauge);
    expect(dry.oddsAtPlanting).toBeGreaterThan(plain.oddsAtPlanting);
    expect(dry.weather.help.gaugeDays).toBe(31);
    const wet = await ask(store, '--irrigation', '2026-07-05=30', '--irrigation', '2026-07-15=30');
    expect(wet.oddsAtPlanting).toBeLessThan(plain.oddsAtPlanting);
    expect(wet.inputs.question.irrigation.length).toBe(2);
    expect(codes(wet)).toContain('irrigation');
    expect(codes(plain)).not.toContain('irrigation');
    const inFile = join(store, 'water.csv');
    writeFileSync(inFile, 'date,irrigation_mm\n2026-07-05,30\n2026-07-15,30\n');
    expect((await ask(store, '--gauge', inFile)).oddsAtPlanting).toBe(wet.oddsAtPlanting);
  });

  it('is refused with the flag named where it cannot be read', async () => {
    const store = tempFolder();
    const path = join(store, 'bad.csv');
    writeFileSync(path, 'date,rain\n2026-07-01,1\n');
    const bad = await runDrywake([...QUESTION, '--gauge', path], store);
    expect(bad.code).toBe(2);
    expect(bad.err).toMatch(/line 1: .*mm or inches.* \[--gauge\]/);
    const pair = await runDrywake([...QUESTION, '--irrigation', '2026-07-05'], store);
    expect(pair.code).toBe(2);
    expect(pair.err).toContain('DATE=MM');
  });
});
