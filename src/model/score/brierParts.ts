/** Forecasts of one bin taken together. */
export interface ForecastBin {
  /** y, mean forecast of the bin [0-1]. */
  readonly forecast: number;
  /** ō_i, share of its outcomes that happened [0-1]. */
  readonly observed: number;
  /** Share of all forecasts in it, or their number. */
  readonly weight: number;
}

/** Parts of the Brier score. */
export interface BrierParts {
  /** How far forecasts lie from what then happened; 0 is best. */
  readonly reliability: number;
  /** How far bins differ from one another in what happened; large is good. */
  readonly resolution: number;
  /** Spread of the outcomes themselves. */
  readonly uncertainty: number;
  /** ō, share of all outcomes that happened [0-1]. */
  readonly baseRate: number;
}

/**
 * The Brier score in parts: BS = REL − RES + UNC, exact where all forecasts of a bin are alike. [0-1]
 *
 * Equation   REL = Σ f_i(y_i − ō_i)²; RES = Σ f_i(ō_i − ō)²; UNC = ō(1 − ō)
 * Symbols    f_i = weight over the sum of weights; ō = `baseRate`, Σ f_i ō_i where none is given
 * Valid      at least one bin with a weight above 0
 * Source     Statistical Methods in the Atmospheric Sciences, Academic Press, Table 7.3
 * Checked    test/published/scores.json (C-BS-2)
 * @example brierParts([{ forecast: 0.2, observed: 0.3, weight: 1 }, { forecast: 0.6, observed: 0.5, weight: 1 }]).reliability // 0.01
 */
export function brierParts(bins: readonly ForecastBin[], baseRate?: number): BrierParts {
  const total = bins.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (bin: ForecastBin) => number) =>
    bins.reduce((sum, bin) => sum + (bin.weight / total) * of(bin), 0);
  const base = baseRate ?? mean(({ observed }) => observed);
  return {
    reliability: mean(({ forecast, observed }) => (forecast - observed) ** 2),
    resolution: mean(({ observed }) => (observed - base) ** 2),
    uncertainty: base * (1 - base),
    baseRate: base,
  };
}
