import type { Quantity } from '../units/units.ts';

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
  readonly label: string;
  /** The value taken where a question says nothing; absent where it hangs on the active. */
  readonly standard?: number | string;
  readonly min?: number;
  readonly max?: number;
  readonly quantity: Quantity;
  readonly unit: { readonly us: string; readonly metric: string };
  /** Words for the blank state where there is no standard. */
  readonly blank?: string;
}

const same = (unit: string) => ({ us: unit, metric: unit });

/** All assumptions, in the order of the model's description. */
export const ASSUMPTIONS: readonly AssumptionEntry[] = [
  {
    key: 'labelRainMm',
    label: 'Label-basis rain, each fall',
    standard: 25,
    min: 0,
    max: 200,
    quantity: 'rain',
    unit: { us: 'in', metric: 'mm' },
  },
  {
    key: 'labelRainEveryDays',
    label: 'Label-basis rain, one fall every',
    standard: 12,
    min: 1,
    max: 90,
    quantity: 'plain',
    unit: same('days'),
  },
  {
    key: 'labelCoverFraction',
    label: 'Ground cover on the label’s soil',
    standard: 0.6,
    min: 0,
    max: 1,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'demandFloorFraction',
    label: 'Least that a label day asks for',
    standard: 0.1,
    min: 0,
    max: 1,
    quantity: 'plain',
    unit: same('breakdown days'),
  },
  {
    key: 'halfLifeFactor',
    label: 'A half-life day of a field study is worth',
    standard: 0.5,
    min: 0.05,
    max: 2,
    quantity: 'plain',
    unit: same('breakdown days'),
  },
  {
    key: 'soilSpread',
    label: 'Spread of speed between soils',
    standard: 0.35,
    min: 0.01,
    max: 2,
    quantity: 'plain',
    unit: same('log units'),
  },
  {
    key: 'labelMargin',
    label: 'Soils that the label covers',
    standard: 0.9,
    min: 0.5,
    max: 0.999,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'moistureResponse',
    label: 'How drying slows breakdown',
    standard: 'dryness',
    quantity: 'plain',
    unit: same(''),
  },
  {
    key: 'moistureExponent',
    label: 'Strength of that slowing',
    min: 0,
    max: 3,
    quantity: 'plain',
    unit: same('exponent'),
    blank: 'the active’s own, or 0.5',
  },
  {
    key: 'q10',
    label: 'Speed-up by warmth',
    min: 1,
    max: 6,
    quantity: 'plain',
    unit: { us: 'times per 18 °F', metric: 'times per 10 °C' },
    blank: 'the active’s own, or 2.58',
  },
  {
    key: 'meltMmPerDegreeDay',
    label: 'Snow melt',
    standard: 2.74,
    min: 0,
    max: 10,
    quantity: 'meltRate',
    unit: { us: 'in per °F and day', metric: 'mm per °C and day' },
  },
  {
    key: 'snowStopsMm',
    label: 'Breakdown stands still under snow water of',
    standard: 5,
    min: 0,
    max: 100,
    quantity: 'rain',
    unit: { us: 'in', metric: 'mm' },
  },
  {
    key: 'foliageHalfLifeDays',
    label: 'Half-life of spray on leaves',
    standard: 10,
    min: 0.5,
    max: 100,
    quantity: 'plain',
    unit: same('days'),
  },
  {
    key: 'washOffPerMm',
    label: 'Wash-off from leaves by rain',
    standard: 0.05,
    min: 0,
    max: 1,
    quantity: 'perRain',
    unit: { us: 'per in', metric: 'per mm' },
  },
  {
    key: 'testCv',
    label: 'Error of a soil residue test',
    standard: 0.3,
    min: 0.01,
    max: 3,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'bioassaySensitivity',
    label: 'Harmful soils that a bioassay finds',
    standard: 0.9,
    min: 0.5,
    max: 0.999,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'bioassaySpecificity',
    label: 'Harmless soils that stay clean in a bioassay',
    standard: 0.9,
    min: 0.5,
    max: 0.999,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'bioassaySpread',
    label: 'Spread of a bioassay’s reading',
    standard: 0.35,
    min: 0.01,
    max: 5,
    quantity: 'plain',
    unit: same('log units'),
  },
  {
    key: 'controlFractionLeft',
    label: 'Dose left when weed control ends',
    standard: 0.25,
    min: 0.01,
    max: 0.9,
    quantity: 'fraction',
    unit: same('%'),
  },
  {
    key: 'activationRainMm',
    label: 'Water that puts the residual to work',
    standard: 13,
    min: 0,
    max: 100,
    quantity: 'rain',
    unit: { us: 'in', metric: 'mm' },
  },
  {
    key: 'activationDays',
    label: 'Within this time of spraying',
    standard: 14,
    min: 1,
    max: 60,
    quantity: 'plain',
    unit: same('days'),
  },
];
