import { assertWithin, InvalidInputError } from '../../errors.ts';

/** What a soil is made of. */
export interface SoilComposition {
  /** S, sand by mass of the fine earth [–], 0 to 1. */
  sand: number;
  /** C, clay by mass of the fine earth [–], 0 to 0.6; sand and clay together at most 1. */
  clay: number;
  /** OM, organic matter by mass [%], 0 to 8. */
  organicMatterPercent: number;
}

/** How a soil holds and conducts water. */
export interface SoilWater {
  /** θ_1500, water at 1500 kPa. [m3 m-3] */
  thetaWiltingPoint: number;
  /** θ_33, water at 33 kPa. [m3 m-3] */
  thetaFieldCapacity: number;
  /** θ_S, water at saturation. [m3 m-3] */
  thetaSaturation: number;
  /** ρ, dry bulk density. [g cm-3] */
  bulkDensity: number;
  /** K_S, conductivity of the saturated soil. [mm h-1] */
  saturatedConductivityMmPerHour: number;
}

/**
 * Water contents, bulk density and saturated conductivity of a soil from its texture and organic matter.
 * [m3 m-3, g cm-3, mm h-1]
 *
 * Equation   w = −0.024S + 0.487C + 0.006OM + 0.005S·OM − 0.013C·OM + 0.068S·C + 0.031
 *            θ_1500 = w + (0.14w − 0.02)
 *            f = −0.251S + 0.195C + 0.011OM + 0.006S·OM − 0.027C·OM + 0.452S·C + 0.299
 *            θ_33 = f + (1.283f² − 0.374f − 0.015)
 *            s = 0.278S + 0.034C + 0.022OM − 0.018S·OM − 0.027C·OM − 0.584S·C + 0.078
 *            θ_S = θ_33 + s + (0.636s − 0.107) − 0.097S + 0.043; ρ = 2.65 (1 − θ_S)
 *            B = ln(1500/33)/ln(θ_33/θ_1500); K_S = 1930 (θ_S − θ_33)^(3 − 1/B)
 * Symbols    see {@link SoilComposition} and {@link SoilWater}
 * Valid      clay under 60 % and organic matter under 8 % (limits from memory), soil neither compacted nor
 *            salty nor stony; outside -> OutOfRangeError. Corners of that range where the regressions contradict
 *            themselves (nearly pure sand without clay or humus, sandy clay rich in humus) -> InvalidInputError
 * Source     Soil Science Society of America Journal 70, 1569-1578 (2006), as coded in public repositories
 * Checked    test/published/soil-water.json
 * @example   soilWaterCharacteristics({ sand: 0.4, clay: 0.2, organicMatterPercent: 2.5 }).thetaFieldCapacity // 0.2796
 */
export function soilWaterCharacteristics({ sand, clay, organicMatterPercent }: SoilComposition): SoilWater {
  assertWithin('sand', sand, 0, 1);
  assertWithin('clay', clay, 0, 0.6);
  assertWithin('sand plus clay', sand + clay, 0, 1 + 1e-9);
  assertWithin('organicMatterPercent', organicMatterPercent, 0, 8);
  const om = organicMatterPercent;
  const sandOm = sand * om;
  const clayOm = clay * om;
  const sandClay = sand * clay;

  const wilting =
    -0.024 * sand + 0.487 * clay + 0.006 * om + 0.005 * sandOm - 0.013 * clayOm + 0.068 * sandClay + 0.031;
  const thetaWiltingPoint = wilting + (0.14 * wilting - 0.02);

  const field =
    -0.251 * sand + 0.195 * clay + 0.011 * om + 0.006 * sandOm - 0.027 * clayOm + 0.452 * sandClay + 0.299;
  const thetaFieldCapacity = field + (1.283 * field * field - 0.374 * field - 0.015);

  const drained =
    0.278 * sand + 0.034 * clay + 0.022 * om - 0.018 * sandOm - 0.027 * clayOm - 0.584 * sandClay + 0.078;
  const drainable = drained + (0.636 * drained - 0.107);
  const thetaSaturation = thetaFieldCapacity + drainable - 0.097 * sand + 0.043;

  const ordered =
    thetaWiltingPoint > 0 && thetaFieldCapacity > thetaWiltingPoint && thetaSaturation > thetaFieldCapacity;
  if (!ordered) {
    throw new InvalidInputError(
      'SOIL_OUTSIDE_REGRESSIONS',
      `The texture equations do not hold for sand ${sand}, clay ${clay} and ${om} % organic matter; wilting point, field capacity and saturation must rise in this order.`,
      {
        hint: 'Choose the nearest texture class, or check the soil test.',
        details: { sand, clay, organicMatterPercent: om },
      },
    );
  }
  const slope = Math.log(1500 / 33) / Math.log(thetaFieldCapacity / thetaWiltingPoint);
  return {
    thetaWiltingPoint,
    thetaFieldCapacity,
    thetaSaturation,
    bulkDensity: 2.65 * (1 - thetaSaturation),
    saturatedConductivityMmPerHour: 1930 * (thetaSaturation - thetaFieldCapacity) ** (3 - 1 / slope),
  };
}
