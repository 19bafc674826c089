import {
  labelDateOf,
  parseIsoDate,
  type SeasonOdds,
  type StationClimate,
  seasonOdds,
  type TopsoilLayer,
} from '../../../src/index.ts';
import { assumptions } from '../seasonOf.ts';
import { soilOf } from './dissipation.ts';
import { figuresOf, intervalOf } from './figures.ts';

/** A rotation trial as the tool would be asked about it. */
export interface HarmQuestion {
  readonly active: string;
  readonly crop: string;
  readonly country?: 'US' | 'CA';
  /** Dose [g/ha]; the top rate where absent. */
  readonly doseGramsPerHa?: number;
  /** Factor on the dose [-]. */
  readonly times?: number;
  readonly appliedOn: string;
  readonly sownAfterMonths: number;
  /** Site factor on the half-life [-]. */
  readonly siteFactor?: number;
  readonly layer?: TopsoilLayer;
  /** True to use the weather of the very years, not of all of them. */
  readonly asObserved?: boolean;
}

/** Odds of harm at sowing with the tool's own interval, rate and half-life; all years of the record. */
export function harmOf(
  climate: StationClimate,
  question: HarmQuestion,
): SeasonOdds & { readonly intervalWords: string } {
  const { active, crop, country = 'US', times = 1, siteFactor = 1, layer = soilOf() } = question;
  const figures = figuresOf(active);
  const { interval, words } = intervalOf(active, crop, country);
  const appliedDay = parseIsoDate(question.appliedOn);
  const plantDay = labelDateOf(appliedDay, { months: question.sownAfterMonths, days: 0 });
  const dose = question.doseGramsPerHa ?? figures.topRateGramsPerHa;
  const answer = seasonOdds(climate, {
    layer,
    applications: [
      {
        appliedDay,
        interval,
        load: (times * dose) / figures.topRateGramsPerHa,
        canopyFraction: 0,
        halfLife: figures.halfLife,
        siteFactor,
        response: figures.response,
        group: figures.group,
      },
    ],
    plantDay,
    oddsLimit: 0.1,
    base: {},
    ...(question.asObserved ? { asOfDay: plantDay } : {}),
    restOfSeasonRain: 1,
    assumptions,
  });
  return { ...answer, intervalWords: words };
}

/** Odds as the table prints them. */
export const sayOdds = (odds: number): string => `odds ${odds.toFixed(2)}`;
