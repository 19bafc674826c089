import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { assumptions } from '../seasonOf.ts';

/*
 * The yardsticks, settled before any case was run and the same for all of them.
 */

/** Factor either way within which the model says 9 soils of 10 lie. [-] */
export const SOIL_BAND = Math.exp(assumptions.soilSpread * normalQuantile(0.95, 0, 1));

/** Dissipation: the model's own range between soils must hold what was measured. */
export const bandRule = {
  criterion: `the model's half-life for the same stretch, times or over ${SOIL_BAND.toFixed(2)}, takes in the measured one`,
  fair: 'that is the range in which the model itself puts 9 soils of 10; a site outside it contradicts what the tool says',
} as const;

/** Whether the model's range, middle times or over the band, meets the measured range. */
export const bandMeets = (modelDays: number, lowDays: number, highDays = lowDays): boolean =>
  modelDays * SOIL_BAND >= lowDays && modelDays / SOIL_BAND <= highDays;

/** A half-life with the model's range between soils, as the table prints it. */
export const sayDays = (days: number): string =>
  `${days.toFixed(0)} d (${(days / SOIL_BAND).toFixed(0)}-${(days * SOIL_BAND).toFixed(0)})`;

/** Odds from which on harm is the likelier outcome. [0-1] */
const EVEN = 0.5;

/** Injury trials: the likelier outcome by the model must be what the trial saw. */
export const harmedRule = {
  criterion: `odds of harm at sowing of ${EVEN} or more`,
  fair: 'one site and one yes or no: the outcome that was seen should be the likelier one',
} as const;

export const unharmedRule = {
  criterion: `odds of harm at sowing under ${EVEN}`,
  fair: 'one site and one yes or no: the outcome that was seen should be the likelier one',
} as const;

export const saysHarmed = (odds: number): boolean => odds >= EVEN;

/** A difference in half-life that field plots would not show. [-] */
export const UNSEEN_CHANGE = 1.2;

export const unchangedRule = {
  criterion: `the model's half-life grows by less than a factor of ${UNSEEN_CHANGE}`,
  fair: 'field plots seldom tell half-lives apart that differ by less than a fifth',
} as const;
