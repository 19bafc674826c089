import { describe, expect, it } from 'vitest';
import { activeViewSchema, catalogueListSchema } from '../../src/schema/catalogueView.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const drywake = (...argv: string[]) => runDrywake(['catalogue', ...argv], tempFolder());

describe('drywake catalogue list', () => {
  it('lists actives and crops, or either', async () => {
    const both = await drywake('list');
    expect(both.code).toBe(0);
    expect(both.out).toMatch(/^flumioxazin +14 +18 +from memory/m);
    expect(both.out).toMatch(/^acetochlor +15 +none/m);
    expect(both.out).toMatch(/^lentil +pulse +2, 4/m);
    expect((await drywake('list', '--actives')).out).not.toMatch(/^lentil/m);
    expect((await drywake('list', '--crops')).out).not.toMatch(/^flumioxazin/m);
    const list = catalogueListSchema.parse(JSON.parse((await drywake('list', '--json')).out));
    expect(list.actives).toHaveLength(catalogue.actives.length);
    expect(list.crops).toHaveLength(catalogue.crops.length);
    const crops = JSON.parse((await drywake('list', '--json', '--crops')).out);
    expect(crops.actives).toEqual([]);
  });
});

describe('drywake catalogue show', () => {
  it('prints figures with unit, mark and source titles, and the crops by interval', async () => {
    const { code, out, err } = await drywake('show', 'Dicamba');
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('Half-life, longest: 151 d (seen, S58)');
    expect(out).toMatch(/^ {2}S58 {2}Degradation and transport of dicamba in a clay soil/m);
    expect(out).toMatch(/soybean: 28 days\n +Sources give 14 days to 28 days/);
    expect(out.indexOf('soybean: 28 days')).toBeLessThan(out.indexOf('lentil: 4 months'));
    expect(out).toContain('does not name');
  });

  it('shows one crop with every row behind it, by country', async () => {
    const { out } = await drywake('show', 'pyroxasulfone', '--crop', 'canola');
    expect(out).toContain('Labels of Australia give 9 months; they set no date for your field.');
    expect(out).toMatch(/row 463, label, canola: 9 months \(Australia, AU; seen, S123\)/);
    expect(out).toContain('at least 9.8 in of rain from application to planting; not to be sown before');
    const metric = await drywake('show', 'pyroxasulfone', '--crop', 'canola', '--units', 'metric');
    expect(metric.out).toContain('at least 250 mm of rain from application to planting; not to be sown');
    expect(metric.out).toContain('at least 125 mm of rain by the end of spring');
    const canada = await drywake('show', 'imazamox', '--crop', 'canola', '--country', 'CA', '--json');
    const view = activeViewSchema.parse(JSON.parse(canada.out));
    expect(view.crops).toHaveLength(1);
    expect(view.crops[0]).toMatchObject({ interval: '11 months', fromMemory: false });
    expect(view.rows.map(({ rowId }) => rowId)).toContain(79);
    const bioassay = activeViewSchema.parse(
      JSON.parse((await drywake('show', 'chlorsulfuron', '--crop', 'sunflower', '--json')).out),
    );
    expect(bioassay.crops[0]).toMatchObject({ interval: null, bioassay: true });
  });

  it('names the nearest spelling, and ends with 2', async () => {
    const { code, err } = await drywake('show', 'flumioxazine');
    expect(code).toBe(2);
    expect(err).toContain('Did you mean flumioxazin?');
    expect((await drywake('show', 'flumioxazin', '--crop', 'lentle')).err).toContain('lentil');
  });

  it('gives rates in the units asked for, with figures and with rows', async () => {
    const rows = ['sulfosulfuron', '--crop', 'sorghum'];
    const us = (await drywake('show', ...rows)).out;
    expect(us).toContain('Usual rate: 0.5 oz/ac (seen');
    expect(us).toContain('rate: 1-2 oz/ac');
    expect(us).not.toContain('g/ha)');
    const metric = (await drywake('show', ...rows, '--units', 'metric')).out;
    expect(metric).toContain('Usual rate: 35 g/ha (seen');
    expect(metric).toContain('rate: 70-140 g/ha');
  });
});
