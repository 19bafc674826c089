import type { Quantity } from '../quantities.ts';

/** An assumption of the model that a question can change; a test holds the list to the schema. */
export interface AssumptionEntry {
  readonly key:
    | 'labelRainMm'
    | 'labelRainEveryDays'
    | 'labelCoverFraction'
    | 'demandFloorFraction'
    | 'halfLifeFactor'
    | 'soilSpread'
    | 'labelMargin'
    | 'moistureResponse'
    | 'moistureExponent'
    | 'q10'
    | 'meltMmPerDegreeDay'
    | 'snowStopsMm'
    | 'foliageHalfLifeDays'
    | 'washOffPerMm'
    | 'testCv'
    | 'bioassaySensitivity'
    | 'bioassaySpecificity'
    | 'bioassaySpread'
    | 'controlFractionLeft'
    | 'activationRainMm'
    | 'activationDays';
  /** The value taken where a question says nothing; absent where it hangs on the active. */
  readonly standard?: number | string;
  readonly min?: number;
  readonly max?: number;
  readonly quantity: Quantity;
  readonly unit: { readonly us: string; readonly metric: string };
  /** What the choices are called, where it is one. */
  readonly words?: Readonly<Record<string, string>>;
  /** Words for the blank state where there is no standard. */
  readonly blank?: string;
}

const same = (unit: string) => ({ us: unit, metric: unit });

/** All assumptions, in the order of the model's description. */
export const ASSUMPTIONS: readonly AssumptionEntry[] = [
  {
    key: 'labelRainMm',
    standard: 25,
    min: 0,
    max: 200,
    quantity: 'rain',
    unit: { us: 'in', metric: 'mm' },
  },
  {
    key: 'labelRainEveryDays',
    standard: 12,
    min: 1,
    max: 90,
    quantity: 'plain',
    unit: same('days'),
  },
  {
    key: 'labelCoverFraction',
    standard: 0.6,
    min: 0,
    max: 1,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'demandFloorFraction',
    standard: 0.1,
    min: 0,
    max: 1,
    quantity: 'plain',
    unit: same('breakdown days'),
  },
  {
    key: 'halfLifeFactor',
    standard: 0.5,
    min: 0.05,
    max: 2,
    quantity: 'plain',
    unit: same('breakdown days'),
  },
  {
    key: 'soilSpread',
    standard: 0.35,
    min: 0.01,
    max: 2,
    quantity: 'plain',
    unit: same('log units'),
  },
  {
    key: 'labelMargin',
    standard: 0.9,
    min: 0.5,
    max: 0.999,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'moistureResponse',
    standard: 'dryness',
    words: { dryness: 'our own form', walker: 'Walker power law' },
    quantity: 'plain',
    unit: same(''),
  },
  {
    key: 'moistureExponent',
    min: 0,
    max: 3,
    quantity: 'plain',
    unit: same('exponent'),
    blank: 'the active’s own, or 0.5',
  },
  {
    key: 'q10',
    min: 1,
    max: 6,
    quantity: 'plain',
    unit: { us: 'times per 18 °F', metric: 'times per 10 °C' },
    blank: 'the active’s own, or 2.58',
  },
  {
    key: 'meltMmPerDegreeDay',
    standard: 2.74,
    min: 0,
    max: 10,
    quantity: 'meltRate',
    unit: { us: 'in per °F and day', metric: 'mm per °C and day' },
  },
  {
    key: 'snowStopsMm',
    standard: 5,
    min: 0,
    max: 100,
    quantity: 'rain',
    unit: { us: 'in', metric: 'mm' },
  },
  {
    key: 'foliageHalfLifeDays',
    standard: 10,
    min: 0.5,
    max: 100,
    quantity: 'plain',
    unit: same('days'),
  },
  {
    key: 'washOffPerMm',
    standard: 0.05,
    min: 0,
    max: 1,
    quantity: 'perRain',
    unit: { us: 'per in', metric: 'per mm' },
  },
  {
    key: 'testCv',
    standard: 0.3,
    min: 0.01,
    max: 3,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'bioassaySensitivity',
    standard: 0.9,
    min: 0.5,
    max: 0.999,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'bioassaySpecificity',
    standard: 0.9,
    min: 0.5,
    max: 0.999,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'bioassaySpread',
    standard: 0.35,
    min: 0.01,
    max: 5,
    quantity: 'plain',
    unit: same('log units'),
  },
  {
    key: 'controlFractionLeft',
    standard: 0.25,
    min: 0.01,
    max: 0.9,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'activationRainMm',
    standard: 13,
    min: 0,
    max: 100,
    quantity: 'rain',
    unit: { us: 'in', metric: 'mm' },
  },
  {
    key: 'activationDays',
    standard: 14,
    min: 1,
    max: 60,
    quantity: 'plain',
    unit: same('days'),
  },
];
