import { InvalidInputError } from '../../errors.ts';

/** Chances of a season below, near and above normal [–]; together 1. */
export interface OutlookChances {
  below: number;
  near: number;
  above: number;
}

/** How far the three chances may be from 1 in all, and from each other to count as equal. */
const TOLERANCE = 1e-9;

/** Length that the intervals from `a` to `a + 1` and from `low` to `high` have in common. */
const overlapWithUnit = (a: number, low: number, high: number): number =>
  Math.max(0, Math.min(a + 1, high) - Math.max(a, low));

/**
 * Weights of past years that agree with a seasonal outlook, in the order of the years; their sum is 1. [–]
 *
 * Equation   w_y = Σ_k p_k m_yk/(n/3), m_yk = share of year y that falls into third k
 * Symbols    values = outlook variable of each year, for example season rain [mm], at least one
 *            below, near, above = p_k, chances of the thirds [–], each 0 to 1, together 1
 * Valid      years sorted by value, ties in input order; each third holds exactly n/3 years, so a year on a
 *            border belongs to two thirds in part. Equal chances give exactly 1/n each. No value, one that is
 *            not a number, or chances that do not sum to 1 -> InvalidInputError
 * Source     Journal of Hydrologic Engineering 1(3) (1996), principle from memory
 * Checked    test/published/outlook.json
 * @example   outlookWeights([30, 10, 20], { below: 0.5, near: 0.3, above: 0.2 }) // [0.2, 0.5, 0.3]
 */
export function outlookWeights(values: readonly number[], chances: OutlookChances): Float64Array {
  const { below, near, above } = chances;
  const n = values.length;
  const sum = below + near + above;
  if (!(Math.min(below, near, above) >= 0 && Math.abs(sum - 1) <= TOLERANCE)) {
    throw new InvalidInputError(
      'OUTLOOK_CHANCES',
      `The outlook chances are ${below}, ${near} and ${above}; each must be at least 0 and together they must be 1.`,
      {
        hint: 'Give the chances of below, near and above normal as fractions that add up to 1.',
        details: { ...chances },
      },
    );
  }
  if (n === 0 || values.some(Number.isNaN)) {
    throw new InvalidInputError(
      'OUTLOOK_VALUES',
      n === 0
        ? 'No year was given to weight; at least one is needed.'
        : `The value of year number ${values.findIndex(Number.isNaN) + 1} is not a number; every year needs one.`,
      { hint: 'Leave out the years that have no value for the outlook window.' },
    );
  }
  if (Math.max(below, near, above) - Math.min(below, near, above) <= TOLERANCE) {
    return new Float64Array(n).fill(1 / n);
  }
  const third = n / 3;
  const order = values.map((_, year) => year).sort((a, b) => values[a] - values[b] || a - b);
  const weights = new Float64Array(n);
  order.forEach((year, rank) => {
    const inBelow = overlapWithUnit(rank, 0, third);
    const inNear = overlapWithUnit(rank, third, 2 * third);
    const inAbove = overlapWithUnit(rank, 2 * third, n);
    weights[year] = (below * inBelow + near * inNear + above * inAbove) / (third * sum);
  });
  return weights;
}
