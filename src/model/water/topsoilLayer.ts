import type { TextureClass } from '../../schema/soil.ts';
import { mulchFactor } from './mulchFactor.ts';
import { soilWaterCharacteristics } from './soilWaterCharacteristics.ts';
import { classTexture, readilyEvaporableWater, textureClassOf } from './textureClass.ts';
import { totalEvaporableWater } from './totalEvaporableWater.ts';

/** Depth of the layer that dries by evaporation, FAO-56 chapter 7. [m] */
const EVAPORATION_LAYER_M = 0.15;
/** Largest crop coefficient of bare soil, FAO-56 eq. 72 without weather data. [-] */
const KC_MAX = 1.2;
/** Basal crop coefficient of nearly bare soil, FAO-56 chapter 7. [-] */
const KCB = 0.15;

/** What the daily water recursion needs to know of a soil. */
export interface TopsoilLayer {
  /** Total evaporable water [mm]. */
  readonly tewMm: number;
  /** Readily evaporable water, at most `tewMm` [mm]. */
  readonly rewMm: number;
  /** Evaporation of wet ground per unit of reference evapotranspiration, cover included [-]. */
  readonly wetEvaporationCoefficient: number;
  /** Water content at field capacity, 33 kPa [m3/m3]. */
  readonly thetaFieldCapacity: number;
  /** Water content at the wilting point, 1500 kPa [m3/m3]. */
  readonly thetaWiltingPoint: number;
}

/** A soil as a question names it: a texture class, or sand and clay. */
export type SoilTexture =
  | { readonly textureClass: TextureClass }
  | { readonly sand: number; readonly clay: number };

/** The texture class of a soil, named or worked out. */
export const textureClassIn = (texture: SoilTexture): TextureClass =>
  'textureClass' in texture ? texture.textureClass : textureClassOf(texture.sand, texture.clay);

/**
 * The evaporation layer of a soil under a ground cover.
 *
 * Symbols    sand, clay [0-1]; organicMatterPercent [% by mass], 0-8; coverFraction [0-1]
 * Valid      the ranges of the texture equations; outside -> OutOfRangeError
 * Source     FAO-56 eq. 71-73 and Table 19; Soil Science Society of America Journal 70, 1569 (2006)
 * @example topsoilLayer({ textureClass: 'loam' }, 2, 0.6).tewMm // 31.071
 */
export function topsoilLayer(
  texture: SoilTexture,
  organicMatterPercent: number,
  coverFraction: number,
): TopsoilLayer {
  const fractions = 'textureClass' in texture ? classTexture(texture.textureClass) : texture;
  const textureClass = textureClassIn(texture);
  const { thetaFieldCapacity, thetaWiltingPoint } = soilWaterCharacteristics({
    ...fractions,
    organicMatterPercent,
  });
  const tewMm = totalEvaporableWater(thetaFieldCapacity, thetaWiltingPoint, EVAPORATION_LAYER_M);
  return {
    tewMm,
    rewMm: Math.min(readilyEvaporableWater(textureClass), tewMm),
    wetEvaporationCoefficient: mulchFactor(coverFraction) * (KC_MAX - KCB),
    thetaFieldCapacity,
    thetaWiltingPoint,
  };
}
