import { describe, expect, it } from 'vitest';
import { bioassayBrief, bioassayGuide } from '../../src/app/bioassayGuide.ts';
import { bioassayGuideSchema } from '../../src/schema/bioassay.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { runDrywake } from '../cli/runDrywake.ts';
import { tempFolder } from '../tempFolder.ts';

const speciesOf = (residual: string, crop: string) =>
  bioassayGuide(catalogue, residual, crop).species.map((one) => one.crop);

describe('bioassayGuide', () => {
  it('names the crop first, then the indicator of the active or its group', () => {
    expect(speciesOf('chlorsulfuron', 'canola')).toEqual(['canola', 'lentil']);
    expect(speciesOf('imazethapyr', 'lentil')).toEqual(['lentil', 'canola']);
    expect(speciesOf('atrazine', 'field pea')).toEqual(['field pea', 'oats']);
    expect(speciesOf('picloram', 'lentil')).toEqual(['lentil', 'dry bean']);
    expect(speciesOf('mesotrione', 'green beans')).toEqual(['snap bean', 'sugarbeet']);
  });

  it('does not sow the crop twice where it is the indicator itself; then sensitive crops of the group stand in', () => {
    const species = speciesOf('chlorsulfuron', 'lentil');
    expect(species[0]).toBe('lentil');
    expect(species.filter((name) => name === 'lentil')).toHaveLength(1);
    for (const name of species.slice(1)) {
      expect(catalogue.crops.find((crop) => crop.name === name)?.sensitivity?.groups).toContain('2');
    }
    expect(species.length).toBeGreaterThan(1);
  });

  it('shows only symptoms of the active’s own group, and tells sources by title', () => {
    const guide = bioassayGuide(catalogue, 'imazethapyr', 'canola');
    expect(guide.reading.some(({ text }) => text.startsWith('Group 2:'))).toBe(true);
    expect(guide.reading.some(({ text }) => /Group (3|4|5):/.test(text))).toBe(false);
    expect(guide.sources.length).toBeGreaterThan(4);
    for (const title of guide.sources) expect(title).not.toMatch(/^[SM]\d+$/);
    expect(new Set(guide.sources).size).toBe(guide.sources.length);
  });

  it.each(catalogue.actives.map(({ isoName }) => isoName))('has every part for %s', (residual) => {
    const guide = bioassayGuideSchema.parse(bioassayGuide(catalogue, residual, 'sunflower'));
    for (const part of ['when', 'where', 'depth', 'steps', 'species', 'reading', 'limits'] as const) {
      expect(guide[part].length, part).toBeGreaterThan(0);
    }
    expect(guide.limits.map(({ text }) => text).join(' ')).toContain('never shortens');
  });

  it('is short in an answer, and silent about what the catalogue does not hold', () => {
    const { actives, crops } = catalogue;
    const brief = bioassayBrief(actives[0], crops[0], catalogue);
    expect(brief).toContain(crops[0].name);
    expect((brief ?? '').split(/[.;] /).length).toBeLessThanOrEqual(3);
    expect(bioassayBrief(null, crops[0], catalogue)).toBeNull();
    expect(bioassayBrief(actives[0], null, catalogue)).toBeNull();
  });
});

describe('drywake bioassay', () => {
  it('prints the guide, marks memory, and keeps to 78 columns but for sources', async () => {
    const { code, out } = await runDrywake(
      ['bioassay', '--residual', 'imazethapyr', '--crop', 'lentil'],
      tempFolder(),
    );
    expect(code).toBe(0);
    expect(out).toContain('Field bioassay: imazethapyr before lentil');
    expect(out).toContain('(from memory)');
    expect(out).toContain('What it does not tell');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(78);
  });

  it('prints JSON of the guide’s shape, and refuses a name it does not know with exit 2', async () => {
    const good = await runDrywake(
      ['bioassay', '--residual', 'atrazine', '--crop', 'oats', '--json'],
      tempFolder(),
    );
    expect(bioassayGuideSchema.parse(JSON.parse(good.out)).crop).toBe('oats');
    const bad = await runDrywake(['bioassay', '--residual', 'nothing', '--crop', 'oats'], tempFolder());
    expect(bad.code).toBe(2);
    expect(bad.out).toBe('');
    expect((await runDrywake(['bioassay', '--crop', 'oats'], tempFolder())).code).toBe(2);
  });
});
