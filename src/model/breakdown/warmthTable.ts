/** Degrees between two nodes of the table, and their number up to the warmest soil it holds. [°C] */
const NODES_PER_DEGREE = 64;
const WARMEST_C = 60;
/** Tables remembered; a question uses one or two. */
const REMEMBERED = 32;

/** Q10^((T − 20)/10) at each 64th of a degree, and what is needed to step between them. */
export interface WarmthTable {
  readonly q10: number;
  /** ln(Q10)/10 from one node to the next [-]. */
  readonly perNode: number;
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
  const table = { q10, perNode: Math.log(q10) / 10 / NODES_PER_DEGREE, nodes };
  known.set(q10, table);
  const oldest = known.keys().next().value;
  if (known.size > REMEMBERED && oldest !== undefined) known.delete(oldest);
  return table;
}

/**
 * Speed of breakdown relative to 20 °C, {@link temperatureResponse} by table and series: a tenth of the time. [–]
 *
 * Equation   Q10^((T − 20)/10) = Q10^((T_j − 20)/10)·e^u, u = (T − T_j)·ln(Q10)/10, e^u to the fourth power of u
 * Symbols    soilTempC = T [°C]; T_j the nearest 64th of a degree
 * Valid      relative error under 1e-15 for Q10 up to 6: u is under 0.0014, what the series leaves out under u^5/120;
 *            above 60 °C the power itself
 * Checked    test/model/tables.test.ts
 */
export function warmthOf({ q10, perNode, nodes }: WarmthTable, soilTempC: number): number {
  if (soilTempC <= 0) return 0;
  if (!(soilTempC < WARMEST_C)) return q10 ** ((soilTempC - 20) / 10);
  const place = soilTempC * NODES_PER_DEGREE;
  const node = (place + 0.5) | 0;
  const u = (place - node) * perNode;
  return nodes[node] * (1 + u * (1 + u * (1 / 2 + u * (1 / 6 + u * (1 / 24)))));
}
