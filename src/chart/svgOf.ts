import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import type { ChartSpec } from './frame.ts';

/** A chart as a file of its own; its colours must be given, since no page stands around it. */
export function svgOf(spec: ChartSpec): Promise<string> {
  const { spec: vega } = compile(structuredClone(spec) as TopLevelSpec);
  const view = new View(parse(vega, undefined, { ast: true }), {
    renderer: 'none',
    expr: expressionInterpreter,
  });
  return view.toSVG().finally(() => view.finalize());
}
