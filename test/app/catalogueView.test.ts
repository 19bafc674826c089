import { describe, expect, it } from 'vitest';
import { catalogueActive, catalogueList } from '../../src/app/catalogueView.ts';
import { activeViewSchema, catalogueListSchema } from '../../src/schema/catalogueView.ts';
import { catalogue } from '../catalogue/loaded.ts';

describe('catalogueActive', () => {
  it('holds its schema for every active and both countries, and cites only sources it lists', () => {
    for (const { isoName, provenance } of catalogue.actives) {
      for (const country of ['US', 'CA'] as const) {
        const view = activeViewSchema.parse(catalogueActive(catalogue, isoName, { country }));
        const listed = new Set(view.sources.map(({ id }) => id));
        const { sources: _, ...rest } = view;
        const named = JSON.stringify(rest).match(/\b[SM]\d{2,3}\b/g) ?? [];
        expect(named.length).toBeGreaterThan(0);
        for (const id of named) expect(listed, `${isoName}: ${id}`).toContain(id);
        expect(view.crops).toHaveLength(catalogue.crops.length);
        expect(view.figures.length).toBeGreaterThanOrEqual(
          Object.values(provenance).filter((one) => one !== null).length,
        );
      }
    }
  });

  it('lists the source of every row behind a crop, and the memory that its rates were worked out with', () => {
    const { rows, sources } = catalogueActive(catalogue, 'atrazine', { crop: 'corn', country: 'CA' });
    expect(rows.find(({ rowId }) => rowId === 474)?.sources).toEqual(['S126', 'M03']);
    const listed = sources.map(({ id }) => id);
    for (const id of rows.flatMap((row) => row.sources)) expect(listed).toContain(id);
  });

  it('puts the shortest interval first and unknown ones last', () => {
    const { crops } = catalogueActive(catalogue, 'chlorsulfuron');
    expect(crops[0]).toMatchObject({ crop: 'soybean', interval: '4 months' });
    expect(crops.at(-1)?.interval).toBeNull();
  });

  it('keeps the two pH terms of sulfentrazone apart', () => {
    const { figures } = catalogueActive(catalogue, 'sulfentrazone');
    expect(figures.find(({ name }) => name === 'Soil pH')?.value).toContain('longer at low pH');
    expect(figures.find(({ name }) => name === 'Soil pH and injury')?.value).toContain('high pH');
  });
});

it('lists the whole catalogue', () => {
  const list = catalogueListSchema.parse(catalogueList(catalogue));
  expect(list.actives.reduce((sum, { intervalRows }) => sum + intervalRows, 0)).toBe(
    catalogue.intervals.length,
  );
});
