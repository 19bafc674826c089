import { evaporationCoefficient, evaporationReduction } from '../../src/index.ts';

/** A day of the worked examples; amounts in mm, given at the start of the day. */
export interface TopLayerDay {
  et0Mm: number;
  kcb: number;
  rainMm?: number;
  irrigationMm?: number;
  uncoveredFraction?: number;
  wettedFraction?: number;
}

/** What the examples print for each day. [mm, –] */
export interface TopLayerSeries extends Record<string, number[]> {
  depletionStartMm: number[];
  percolationMm: number[];
  kr: number[];
  ke: number[];
  evaporationMm: number[];
  depletionEndMm: number[];
  cropEtMm: number[];
}

/**
 * Runs the dual coefficient method from day to day as FAO-56 does in its examples: K_r and K_e come from
 * the model, the balance of the layer (eq. 75, 77, 79) and the crop total (eq. 69) are written out here.
 */
export function topLayerDays(
  days: readonly TopLayerDay[],
  { tewMm, rewMm, kcMax, startDepletionMm }: Record<'tewMm' | 'rewMm' | 'kcMax' | 'startDepletionMm', number>,
): TopLayerSeries {
  const series: TopLayerSeries = {
    depletionStartMm: [],
    percolationMm: [],
    kr: [],
    ke: [],
    evaporationMm: [],
    depletionEndMm: [],
    cropEtMm: [],
  };
  let depletionMm = startDepletionMm;
  for (const day of days) {
    const { et0Mm, kcb, rainMm = 0, irrigationMm = 0, uncoveredFraction = 1, wettedFraction = 1 } = day;
    const waterMm = rainMm + irrigationMm / wettedFraction;
    const percolationMm = Math.max(0, waterMm - depletionMm);
    const startMm = Math.max(0, depletionMm - waterMm);
    const exposedWettedFraction = Math.min(uncoveredFraction, wettedFraction);
    const kr = evaporationReduction(startMm, tewMm, rewMm);
    const ke = evaporationCoefficient({ kr, kcMax, kcb, exposedWettedFraction });
    const evaporationMm = ke * et0Mm;
    depletionMm = Math.min(tewMm, startMm + evaporationMm / exposedWettedFraction);
    series.depletionStartMm.push(startMm);
    series.percolationMm.push(percolationMm);
    series.kr.push(kr);
    series.ke.push(ke);
    series.evaporationMm.push(evaporationMm);
    series.depletionEndMm.push(depletionMm);
    series.cropEtMm.push((kcb + ke) * et0Mm);
  }
  return series;
}
