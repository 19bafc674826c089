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
/** One of the twelve texture classes. */
export type TextureClass = (typeof TEXTURE_CLASSES)[number];

/** Groups of texture classes as labels name them, coarse to fine. */
export const TEXTURE_GROUPS = ['coarse', 'medium', 'fine'] as const;
export type TextureGroup = (typeof TEXTURE_GROUPS)[number];

/** Organic matter taken where a question gives none. [% by mass] */
export const DEFAULT_ORGANIC_MATTER_PERCENT = 2;

/** Organic matter as answers name it: what was given, or what is taken where nothing was. */
export const organicMatterWords = (percent: number | undefined): string =>
  percent === undefined
    ? `${DEFAULT_ORGANIC_MATTER_PERCENT} % organic matter, not given`
    : `${percent} % organic matter`;
