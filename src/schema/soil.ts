/** The twelve USDA texture classes, in plain words, coarse to fine. */
export const TEXTURE_CLASSES = [
  'sand',
  'loamy sand',
  'sandy loam',
  'loam',
  'silt loam',
  'silt',
  'sandy clay loam',
  'clay loam',
  'silty clay loam',
  'sandy clay',
  'silty clay',
  'clay',
] as const;
export type TextureClass = (typeof TEXTURE_CLASSES)[number];
