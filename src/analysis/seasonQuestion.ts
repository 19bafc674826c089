import type { TopsoilLayer } from '../model/water/topsoilLayer.ts';
import type { Assumptions } from '../schema/assumptions.ts';
import type { Application } from './applications.ts';
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
  readonly assumptions: Assumptions;
}
