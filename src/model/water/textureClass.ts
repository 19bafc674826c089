import { assertWithin } from '../../errors.ts';
import type { TextureClass } from '../../schema/soil.ts';

/** Sand and clay by mass of the fine earth [–]; silt is the rest. */
export interface SandAndClay {
  sand: number;
  clay: number;
}

interface ClassFigures extends SandAndClay {
  rewMm: number;
}

const FIGURES: Readonly<Record<TextureClass, ClassFigures>> = {
  sand: { sand: 0.88, clay: 0.05, rewMm: 4.5 },
  'loamy sand': { sand: 0.8, clay: 0.05, rewMm: 6 },
  'sandy loam': { sand: 0.65, clay: 0.1, rewMm: 8 },
  loam: { sand: 0.4, clay: 0.2, rewMm: 9 },
  'silt loam': { sand: 0.2, clay: 0.15, rewMm: 9.5 },
  silt: { sand: 0.1, clay: 0.05, rewMm: 9.5 },
  'sandy clay loam': { sand: 0.6, clay: 0.25, rewMm: 9 },
  'clay loam': { sand: 0.3, clay: 0.35, rewMm: 9.5 },
  'silty clay loam': { sand: 0.1, clay: 0.35, rewMm: 9.5 },
  'sandy clay': { sand: 0.5, clay: 0.4, rewMm: 9.5 },
  'silty clay': { sand: 0.1, clay: 0.45, rewMm: 10 },
  clay: { sand: 0.25, clay: 0.5, rewMm: 10 },
};

/**
 * Sand and clay of the soil that stands for a texture class. [–]
 *
 * Source     class rows of Soil Science Society of America Journal 70, 1569-1578 (2006), Table 3 (from memory);
 *            sandy clay loam, silty clay loam and silty clay are our choice inside their class
 * Checked    test/model/textureClass.test.ts: each lies in its own class of the triangle
 * @example   classTexture('loam') // { sand: 0.4, clay: 0.2 }
 */
export function classTexture(textureClass: TextureClass): SandAndClay {
  const { sand, clay } = FIGURES[textureClass];
  return { sand, clay };
}

/**
 * Water that leaves a freshly wetted top layer at full speed, before the surface dries. [mm]
 *
 * Source     middle of the range in FAO-56 Table 19; sandy clay loam, clay loam and sandy clay have no row
 *            there and take values between their neighbours
 * @example   readilyEvaporableWater('loam') // 9
 */
export function readilyEvaporableWater(textureClass: TextureClass): number {
  return FIGURES[textureClass].rewMm;
}

/** Per cent with the rounding noise of a fraction removed, so that 0.07 counts as 7. */
const percent = (fraction: number): number => Math.round(fraction * 1e9) / 1e7;

/**
 * Texture class of a soil with the given sand and clay.
 *
 * Equation   the boundaries of the USDA texture triangle, silt = 1 − sand − clay; every soil has one class
 * Symbols    sand, clay = shares by mass of the fine earth [–], 0 to 1, together at most 1
 * Valid      mineral soil; outside the ranges -> OutOfRangeError
 * Source     USDA soil texture triangle (from memory)
 * Checked    test/model/textureClass.test.ts (properties; no published example)
 * @example   textureClassOf(0.4, 0.2) // 'loam'
 */
export function textureClassOf(sand: number, clay: number): TextureClass {
  assertWithin('sand', sand, 0, 1);
  assertWithin('clay', clay, 0, 1);
  assertWithin('sand plus clay', sand + clay, 0, 1 + 1e-9);
  const s = percent(sand);
  const c = percent(clay);
  const silt = percent(1 - sand - clay);

  if (c >= 40 && silt >= 40) return 'silty clay';
  if (c >= 35 && s > 45) return 'sandy clay';
  if (c >= 40) return 'clay';
  if (c >= 27 && s <= 20) return 'silty clay loam';
  if (c >= 27 && s <= 45) return 'clay loam';
  if (c >= 20 && silt < 28) return 'sandy clay loam';
  if (silt >= 80 && c < 12) return 'silt';
  if (silt >= 50) return 'silt loam';
  if (silt + 1.5 * c < 15) return 'sand';
  if (silt + 2 * c < 30) return 'loamy sand';
  return c >= 7 && s <= 52 ? 'loam' : 'sandy loam';
}
