import type { TextureClass, TextureGroup } from '../../schema/soil.ts';

const GROUPS: Readonly<Record<TextureClass, TextureGroup>> = {
  sand: 'coarse',
  'loamy sand': 'coarse',
  'sandy loam': 'coarse',
  loam: 'medium',
  'silt loam': 'medium',
  silt: 'medium',
  'sandy clay loam': 'medium',
  'clay loam': 'fine',
  'silty clay loam': 'fine',
  'sandy clay': 'fine',
  'silty clay': 'fine',
  clay: 'fine',
};

/**
 * Whether labels count a soil as coarse, medium or fine.
 *
 * Source     groups of the twelve classes as herbicide labels of the United States commonly list them (from memory); a
 *            label that draws the line elsewhere is entered by its own words
 * @example   textureGroupOf('sandy loam') // 'coarse'
 */
export const textureGroupOf = (textureClass: TextureClass): TextureGroup => GROUPS[textureClass];
