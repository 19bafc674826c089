import { wilsonInterval } from '../model/odds/wilsonInterval.ts';
import { brierScore, brierSkill } from '../model/score/brierScore.ts';

/** Bands of odds, each a fifth wide: fields are few. */
const BINS = 5;

/** Odds that were given, and whether the crop was hurt. */
export interface JudgedOutcome {
  /** [0-1] */
  readonly odds: number;
  readonly injured: boolean;
}

/** One band of the odds with what came. */
export interface OutcomeBin {
  readonly from: number;
  readonly to: number;
  readonly outcomes: number;
  readonly injured: number;
  readonly meanOdds: number;
  /** 95 % Wilson interval of the share hurt [0-1]. */
  readonly low: number;
  readonly high: number;
}

/** How odds did against outcomes of single fields. */
export interface OutcomeScores {
  /** Sum of the odds. */
  readonly expected: number;
  readonly brier: number;
  /** Against always giving the share hurt; null where all or none were. */
  readonly skill: number | null;
  readonly bins: readonly OutcomeBin[];
}

/** Scores of single outcomes; each counts as one, though fields of a year share its weather. At least one is needed. */
export function outcomeScores(outcomes: readonly JudgedOutcome[]): OutcomeScores {
  const odds = outcomes.map((one) => one.odds);
  const came = outcomes.map(({ injured }) => (injured ? 1 : 0));
  const brier = brierScore(odds, came);
  const baseRate = came.reduce((sum: number, one) => sum + one, 0) / came.length;
  return {
    expected: odds.reduce((sum, one) => sum + one, 0),
    brier,
    skill: brierSkill(brier, baseRate),
    bins: Array.from({ length: BINS }, (_, bin) => bin).flatMap((bin) => {
      const own = outcomes.filter((one) => Math.min(BINS - 1, Math.floor(one.odds * BINS)) === bin);
      return own.length === 0 ? [] : [binOf(bin, own)];
    }),
  };
}

function binOf(bin: number, own: readonly JudgedOutcome[]): OutcomeBin {
  const injured = own.filter((one) => one.injured).length;
  const { low, high } = wilsonInterval(injured, own.length);
  return {
    from: bin / BINS,
    to: (bin + 1) / BINS,
    outcomes: own.length,
    injured,
    meanOdds: own.reduce((sum, { odds }) => sum + odds, 0) / own.length,
    low,
    high,
  };
}
