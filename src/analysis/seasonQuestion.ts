import type { TopsoilLayer } from '../model/water/topsoilLayer.ts';
import type { OwnAmount } from '../model/weather/ownRecords.ts';
import type { Assumptions } from '../schema/assumptions.ts';
import type { Application } from './applications.ts';
import type { Finding } from './evidence.ts';
import type { OutlookQuestion } from './yearWeights.ts';

/** A question with names resolved and dates as day numbers. */
export interface SeasonQuestion {
  readonly layer: TopsoilLayer;
  readonly applications: readonly Application[];
  readonly plantDay: number;
  readonly oddsLimit: number;
  readonly base: { readonly from?: number; readonly to?: number };
  /** Last observed day; absent while planning. */
  readonly asOfDay?: number;
  readonly outlook?: OutlookQuestion;
  readonly restOfSeasonRain: number;
  /** Water given to the field; it comes on its days in every trace, given already or planned. */
  readonly irrigation?: readonly OwnAmount[];
  /** Soil tests and bioassays of the season so far. */
  readonly evidence?: readonly Finding[];
  /** The applications where the evidence was taken, where dose or soil there are not those asked about. */
  readonly sampled?: readonly Application[];
  readonly assumptions: Assumptions;
}
