import { changeset, parse, type Runtime, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import type { ChartSpec } from '../../../src/chart/frame.ts';

/** A chart drawn into an element. */
export interface Drawing {
  /** Draws another specification; where only rows differ, the drawing stays and takes the new rows. */
  readonly update: (spec: ChartSpec) => Promise<void>;
  readonly remove: () => void;
}

/** What is done with the row of a mark that is pressed, or pointed at until it is left. */
export interface MarkEvents {
  readonly pick: (row: object) => void;
  readonly point: (row: object | null) => void;
}

/** Draws a chart. Expressions are interpreted, never evaluated, so that a strict policy can stand. */
export async function draw(element: HTMLElement, first: ChartSpec, events: MarkEvents): Promise<Drawing> {
  await document.fonts.ready;
  let frame = frameOf(first);
  let texts = textsOf(first);
  let view = viewOf(element, first, events);
  await view.runAsync();
  return {
    async update(next) {
      const nextFrame = frameOf(next);
      const nextTexts = textsOf(next);
      if (nextFrame !== frame) {
        view.finalize();
        view = viewOf(element, next, events);
      } else {
        for (const [name, rows] of Object.entries(next.datasets)) {
          if (nextTexts[name] === texts[name]) continue;
          const exchange = changeset().remove(() => true);
          view.change(name, exchange.insert([...rows]));
        }
      }
      frame = nextFrame;
      texts = nextTexts;
      await view.runAsync();
    },
    remove: () => view.finalize(),
  };
}

/** A specification without its rows. */
const frameOf = (spec: ChartSpec): string => JSON.stringify({ ...spec, datasets: null, description: null });

/** Each data set as text, to tell whether its rows have changed. */
const textsOf = ({ datasets }: ChartSpec): Record<string, string> =>
  Object.fromEntries(Object.entries(datasets).map(([name, rows]) => [name, JSON.stringify(rows)]));

function viewOf(element: HTMLElement, spec: ChartSpec, events: MarkEvents): View {
  const vega = compile(structuredClone(spec) as TopLevelSpec).spec;
  const runtime: Runtime = parse(vega, undefined, { ast: true });
  const view = new View(runtime, {
    renderer: 'svg',
    container: element,
    hover: false,
    tooltip: () => {},
    expr: expressionInterpreter,
  });
  view.addEventListener('click', (_, item) => {
    if (item?.datum) events.pick(item.datum);
  });
  view.addEventListener('mouseover', (_, item) => events.point(item?.datum ?? null));
  view.addEventListener('mouseout', () => events.point(null));
  return view;
}
