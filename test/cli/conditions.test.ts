import { describe, expect, it } from 'vitest';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const odds = (...argv: string[]) =>
  runDrywake(
    ['odds', '--station', 'demo-invented', '--applied', '2026-08-14', '--plant', '2027-05-10', ...argv],
    tempFolder(),
  );
const oneLine = (text: string) => text.replaceAll(/\s+/g, ' ');
const flumioxazin = ['--residual', 'flumioxazin'];

describe('drywake odds, beside the dates', () => {
  it('prints each condition of the label: what it asks for, how it stands, what follows', async () => {
    const { out } = await odds(...flumioxazin, '--crop', 'lentil');
    expect(oneLine(out)).toMatch(
      /Label conditions - At least 1\.0 in of rain and irrigation from the application on by November 13, 2026: open; met in more than 19 in 20 seasons like this\. Asked for the shorter interval of 3 months, which is told and not taken; otherwise 4 months\. \(from memory\)/,
    );
    expect(oneLine(out)).toContain('Tillage before planting: open, for only you can tell.');
  });

  it('prints the counting rules as advice with region and source', async () => {
    const { out } = await odds(...flumioxazin, '--crop', 'lentil', '--as-of', '2026-09-30');
    expect(oneLine(out)).toMatch(
      /Counting rules: advice by region, which sets no date - North Dakota and Minnesota, 6\.0 in of rain from June 1 to September 1, 2026: under this sum [^.]+\. Here [\d.]+ in to September 1, 2026, under it\. \(.*farm press/,
    );
  });

  it('prints a mix as a table, its ruling species named', async () => {
    const { out } = await odds(...flumioxazin, '--crop', 'lentil + oats');
    expect(out).toMatch(/^Species of the mix {2,}Interval {2,}Label date/m);
    expect(out).toMatch(/^oats \(rules\) +12 months +August 14, 2027/m);
    expect(out).toMatch(/^lentil +4 months +December 14, 2026/m);
    expect(out.split('\n').every((line) => line.length <= 100)).toBe(true);
  });

  it('takes the use of the stand, a rate in grams and an interval of your own', async () => {
    const cover = await odds(...flumioxazin, '--crop', 'oats', '--stand-use', 'cover only');
    expect(oneLine(cover.out)).toContain('neither grazed nor harvested');
    const wheat = ['--residual', 'pyroxasulfone', '--crop', 'winter wheat'];
    expect(oneLine((await odds(...wheat)).out)).toContain('(6 months, catalogue)');
    const low = oneLine((await odds(...wheat, '--rate-grams', '100')).out);
    expect(low).toContain('(1 month, catalogue)');
    expect(low).toContain('passed over: 4 months, 6 months.');
    expect(low).toMatch(
      /A rate from 2\.6 oz\/ac to 3\.4 oz\/ac of active ingredient: not met, with 1\.4 oz\/ac\..*\(computed; sets no date\)/,
    );
    const own = oneLine((await odds(...flumioxazin, '--crop', 'lentil', '--interval', '4 months')).out);
    expect(own).not.toMatch(/from memory, not yet confirmed/);
    expect(own).toContain('(from memory; sets no date)');
  });

  it('refuses another use of the stand, and a label entry that is not there', async () => {
    expect(await odds(...flumioxazin, '--crop', 'oats', '--stand-use', 'burnt')).toMatchObject({
      code: 2,
      out: '',
    });
    const { code, err } = await odds('--label-entry', 'no-such', '--crop', 'lentil');
    expect(code).toBe(2);
    expect(err).toContain('There is no label entry "no-such".');
  });
});
