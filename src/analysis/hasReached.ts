/** More than the rounding of long sums of decimal amounts comes to, and far less than any gauge reads. [mm] */
const ROUNDING_MM = 1e-6;

/**
 * Whether a sum of water has reached a least one, both in mm: ten readings of 2.54 mm reach an inch, though their sum in
 * binary falls short of 25.4 by a hair.
 * @example hasReached(25.399999999999995, 25.4) // true
 */
export const hasReached = (sumMm: number, leastMm: number): boolean => sumMm >= leastMm - ROUNDING_MM;
