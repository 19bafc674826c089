import { describe, expect, it } from 'vitest';
import { findActive } from '../../src/catalogue/findActive.ts';
import { findCrop } from '../../src/catalogue/findCrop.ts';
import { InvalidInputError } from '../../src/errors.ts';
import { catalogue } from './loaded.ts';

function refusal(find: () => unknown): InvalidInputError {
  try {
    find();
  } catch (error) {
    if (error instanceof InvalidInputError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('findActive', () => {
  it.each(['flumioxazin', 'FLUMIOXAZIN', '  Flumioxazin '])('finds "%s"', (name) => {
    expect(findActive(catalogue, name).isoName).toBe('flumioxazin');
  });

  it.each([
    ['flumioxazine', 'flumioxazin'],
    ['imazetaphyr', 'imazethapyr'],
    ['imazmox', 'imazamox'],
    ['clopyrlaid', 'clopyralid'],
  ])('suggests for "%s" the name %s', (slip, meant) => {
    const error = refusal(() => findActive(catalogue, slip));
    expect(error.code).toBe('RESIDUAL_UNKNOWN');
    expect(error.message).toBe(`The catalogue has no residual "${slip}".`);
    expect(error.hint).toBe(`Did you mean ${meant}?`);
  });

  it('lists all where nothing is near', () => {
    const error = refusal(() => findActive(catalogue, 'water'));
    expect(error.hint).toMatch(/^It has 2,4-D, acetochlor, aminopyralid, atrazine, .*, trifluralin\.$/);
    expect(refusal(() => findActive(catalogue, '')).hint).toContain('chlorsulfuron');
  });
});

describe('findCrop', () => {
  it.each([
    ['Sugar Beets', 'sugarbeet'],
    ['sugar-beet', 'sugarbeet'],
    ['maize', 'corn'],
    ['Spring Wheat', 'spring wheat'],
    ['garbanzo beans', 'chickpea'],
    ['cereal rye', 'rye'],
    ['peas', 'field pea'],
  ])('takes "%s" for %s', (name, crop) => {
    expect(findCrop(catalogue, name).name).toBe(crop);
  });

  it.each([
    ['lentle', 'lentil'],
    ['conola', 'canola'],
    ['sunflwr', 'sunflower'],
    ['barly', 'barley'],
  ])('suggests for "%s" the crop %s', (slip, meant) => {
    const error = refusal(() => findCrop(catalogue, slip));
    expect(error.code).toBe('CROP_UNKNOWN');
    expect(error.hint).toBe(`Did you mean ${meant}?`);
    expect(error.details).toMatchObject({ given: slip, nearest: [meant] });
  });

  it('does not press a far word into a suggestion', () => {
    expect(refusal(() => findCrop(catalogue, 'quinoa')).hint).toMatch(
      /^It has alfalfa, annual ryegrass, barley/,
    );
  });
});
