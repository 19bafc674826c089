/** How a figure changes over time. */
export interface Trend {
  /** Change per unit of time, by least squares. */
  readonly slope: number;
  /** Standard error of that, the rest taken to be independent. */
  readonly error: number;
}

/** Trend of figures over their times; at least three of them. */
export function trendOf(points: readonly { readonly at: number; readonly value: number }[]): Trend {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [x, y] = [mean(points.map(({ at }) => at)), mean(points.map(({ value }) => value))];
  const spread = points.reduce((sum, { at }) => sum + (at - x) ** 2, 0);
  const slope = points.reduce((sum, { at, value }) => sum + (at - x) * (value - y), 0) / spread;
  const rest = points.reduce((sum, { at, value }) => sum + (value - y - slope * (at - x)) ** 2, 0);
  return { slope, error: Math.sqrt(rest / (points.length - 2) / spread) };
}
