/** Degrees between two nodes of the table, and their number up to the warmest soil it holds. [°C] */
const NODES_PER_DEGREE = 4;
const WARMEST_C = 60;
/** Tables remembered; a question uses one or two. */
const REMEMBERED = 32;

/** Q10^((T − 20)/10) at each quarter of a degree, and what is needed to step between them. */
export interface WarmthTable {
  readonly q10: number;
  /** ln(Q10)/10 [1/°C]. */
  readonly perDegree: number;
  readonly nodes: Float64Array;
}

const known = new Map<number, WarmthTable>();

/** The table of one Q10; the last few are remembered. */
export function warmthTable(q10: number): WarmthTable {
  const found = known.get(q10);
  if (found) return found;
  const nodes = Float64Array.from(
    { length: WARMEST_C * NODES_PER_DEGREE + 1 },
    (_, node) => q10 ** ((node / NODES_PER_DEGREE - 20) / 10),
  );
  const table = { q10, perDegree: Math.log(q10) / 10, nodes };
  known.set(q10, table);
  const oldest = known.keys().next().value;
  if (known.size > REMEMBERED && oldest !== undefined) known.delete(oldest);
  return table;
}

/**
 * Speed of breakdown relative to 20 °C, {@link temperatureResponse} by table and series: a tenth of the time. [–]
 *
 * Equation   Q10^((T − 20)/10) = Q10^((T_j − 20)/10)·e^u, u = (T − T_j)·ln(Q10)/10, e^u to the sixth power of u
 * Symbols    soilTempC = T [°C]; T_j the nearest quarter of a degree
 * Valid      relative error under 1e-15 for Q10 up to 6; above 60 °C the power itself
 * Checked    test/model/tables.test.ts
 */
export function warmthOf({ q10, perDegree, nodes }: WarmthTable, soilTempC: number): number {
  if (soilTempC <= 0) return 0;
  if (!(soilTempC < WARMEST_C)) return q10 ** ((soilTempC - 20) / 10);
  const node = (soilTempC * NODES_PER_DEGREE + 0.5) | 0;
  const u = (soilTempC - node / NODES_PER_DEGREE) * perDegree;
  const series = 1 + u * (1 + u * (1 / 2 + u * (1 / 6 + u * (1 / 24 + u * (1 / 120 + u * (1 / 720))))));
  return nodes[node] * series;
}
