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
        for (const { sources } of view.figures) for (const id of sources) expect(listed).toContain(id);
        expect(view.crops).toHaveLength(catalogue.crops.length);
        expect(view.figures.length).toBeGreaterThanOrEqual(
          Object.values(provenance).filter((one) => one !== null).length,
        );
      }
    }
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
