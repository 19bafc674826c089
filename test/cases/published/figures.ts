import {
  type BreakdownResponse,
  chooseInterval,
  findActive,
  findCrop,
  type Interval,
  MissingDataError,
  phFactor,
  sayInterval,
} from '../../../src/index.ts';
import { catalogue } from '../../catalogue/loaded.ts';
import { assumptions } from '../seasonOf.ts';

/** What the tool would take for an active from its catalogue. */
export interface Figures {
  /** Half-life without site factors [breakdown days]. */
  readonly halfLife: number;
  readonly response: BreakdownResponse;
  readonly topRateGramsPerHa: number;
  readonly group: string;
  /** Site factor on the half-life at a soil pH [-]. */
  phFactorAt(soilPh: number): number;
}

/** Moisture response and warmth response with the tool's defaults. */
export const defaultResponse: BreakdownResponse = {
  q10: 2.58,
  moisture: 'dryness',
  moistureExponent: 0.5,
  snowStopsMm: assumptions.snowStopsMm,
};

/** Breakdown days of a half-life that was measured in a field. [breakdown days] */
export const fromField = (fieldHalfLifeDays: number): number =>
  assumptions.halfLifeFactor * fieldHalfLifeDays;

/** The catalogue's figures of an active, by its ISO name. */
export function figuresOf(isoName: string): Figures {
  const active = findActive(catalogue, isoName);
  const days = active.fieldHalfLifeDays?.typical;
  if (days === undefined || active.topRateGramsPerHa === null) {
    throw new MissingDataError(
      'FIGURES_MISSING',
      `The catalogue lacks a half-life or a top rate of ${isoName}.`,
    );
  }
  return {
    halfLife: fromField(days),
    response: {
      ...defaultResponse,
      q10: active.q10 ?? defaultResponse.q10,
      moistureExponent: active.moistureExponent ?? defaultResponse.moistureExponent,
    },
    topRateGramsPerHa: active.topRateGramsPerHa,
    group: String(active.group),
    phFactorAt: (soilPh) => phFactor(active.ph, soilPh),
  };
}

/** The interval that the tool would take for an active and a crop, and its words. */
export function intervalOf(
  isoName: string,
  crop: string,
  country: 'US' | 'CA' = 'US',
): { readonly interval: Interval; readonly words: string } {
  const chosen = chooseInterval(
    catalogue,
    findActive(catalogue, isoName),
    findCrop(catalogue, crop),
    country,
  );
  return { interval: { months: chosen.months, days: chosen.days }, words: sayInterval(chosen) };
}
