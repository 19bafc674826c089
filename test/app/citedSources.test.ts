import { expect, it } from 'vitest';
import { citedSources } from '../../src/app/citedSources.ts';
import { catalogue } from '../catalogue/loaded.ts';

it('takes source ids out of a text and gives their titles', () => {
  const { text, sources } = citedSources('hurt for years (S31, S32): look at the soil', catalogue);
  expect(text).toBe('hurt for years: look at the soil');
  expect(sources.length).toBe(2);
  expect(sources[0]).toContain('Imidazolinone');
});

it('leaves other brackets alone', () => {
  expect(citedSources('warm (above 5 °C)', catalogue)).toEqual({ text: 'warm (above 5 °C)', sources: [] });
});

it('resolves every citation in the cautions of every active', () => {
  const texts = catalogue.actives.flatMap(({ cautions }) => cautions).filter((text) => /\([SM]\d/.test(text));
  expect(texts.length).toBeGreaterThan(10);
  for (const text of texts) {
    const cited = citedSources(text, catalogue);
    expect(cited.sources.length, text).toBeGreaterThan(0);
    expect(cited.text).not.toMatch(/[SM]\d{2}/);
  }
});
