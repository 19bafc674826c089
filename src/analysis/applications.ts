import { type Interval, labelDateOf } from '../model/calendar/interval.ts';
import { type BreakdownResponse, responseKey } from '../model/run/breakdownSums.ts';

/** One treatment as the analysis sees it. */
export interface Application {
  /** Date of application [day number]. */
  readonly appliedDay: number;
  /** The label's rotation interval for the crop asked about. */
  readonly interval: Interval;
  /** Day before which the label's own conditions do not let the crop go in [day number]; absent where none says so. */
  readonly notBefore?: number;
  /** Dose in full label doses, overlap included [-], > 0. */
  readonly load: number;
  /** Share of the dose caught by leaves [0-1]. */
  readonly canopyFraction: number;
  /** Half-life without site factors [breakdown days]. */
  readonly halfLife: number;
  /** Site half-life over the half-life without site factors [-]. */
  readonly siteFactor: number;
  readonly response: BreakdownResponse;
  /** Mode-of-action group; residues of one group add up. */
  readonly group: string;
  /** Name of the residual: tells the residue that a soil test speaks of. */
  readonly residual?: string;
}

/** Label date of an application: its interval's end, and later where a condition of the label asks for it. [day number] */
export const labelDayOf = ({
  appliedDay,
  interval,
  notBefore = Number.NEGATIVE_INFINITY,
}: Application): number => Math.max(labelDateOf(appliedDay, interval), notBefore);

/** What tells one application from another: all of it, in one text. */
export const applicationKey = ({
  appliedDay,
  interval,
  notBefore,
  load,
  canopyFraction,
  halfLife,
  siteFactor,
  response,
  group,
  residual,
}: Application): string =>
  `${appliedDay} ${interval.months} ${interval.days} ${notBefore} ${load} ${canopyFraction} ${halfLife} ${siteFactor} ${responseKey(response)} ${group} ${residual}`;
