/** Bulk density taken where a source gives none. [g/cm3] */
const BULK_DENSITY = 1.35;

/**
 * Concentration of a whole dose mixed evenly into a depth of soil. [ng/g]
 *
 * Equation   C = dose [g/ha] · 1e9 / (depth · 1e8 · ρ), 1 ha = 1e8 cm2
 * @example residueNgPerG(40, 10) // 29.6
 */
export const residueNgPerG = (doseGramsPerHa: number, depthCm: number, bulkDensity = BULK_DENSITY): number =>
  (doseGramsPerHa * 10) / (depthCm * bulkDensity);
