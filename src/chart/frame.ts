import type { Field } from 'vega-lite/types_unstable/channeldef.js';
import type { LayerSpec } from 'vega-lite/types_unstable/spec/layer.js';
import type { TopLevel } from 'vega-lite/types_unstable/spec/toplevel.js';
import type { UnitSpec } from 'vega-lite/types_unstable/spec/unit.js';
import { type ChartTokens, chartConfig } from './theme.ts';

/** A chart of this project: layers over named data sets, so that rows can be exchanged in a drawn view. */
export type ChartSpec = TopLevel<LayerSpec<Field>> & { readonly datasets: ChartData };
/** Rows of a chart, by the name of their data set. */
export type ChartData = Readonly<Record<string, readonly object[]>>;
/** One layer of a chart. */
export type ChartLayer = LayerSpec<Field> | UnitSpec<Field>;

/** What every chart takes beside its rows. */
export interface ChartOptions {
  readonly tokens: ChartTokens;
  /** The finding in words, for those who cannot see the drawing. */
  readonly description: string;
  /** Title and source line drawn into the chart; leave out where a caption beside it says both. */
  readonly title?: string;
  readonly source?: string;
}

/** Sizes of the plot area and the room around it. [px] */
export interface PlotSize {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly padding: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
}

/** Room that a title and a source line take above the plot. [px] */
const TITLE_ROOM_PX = 48;

/** Puts layers into a top-level specification of fixed size: nothing moves when numbers get longer. */
export function framed(
  { widthPx, heightPx, padding }: PlotSize,
  { tokens, description, title, source }: ChartOptions,
  datasets: ChartData,
  layer: ChartLayer[],
): ChartSpec {
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    description,
    width: widthPx,
    height: heightPx,
    autosize: { type: 'none' },
    padding: title ? { ...padding, top: padding.top + TITLE_ROOM_PX } : padding,
    ...(title && { title: { text: title, ...(source && { subtitle: source }), offset: padding.top } }),
    config: chartConfig(tokens),
    datasets: datasets as Record<string, object[]>,
    layer,
  };
}

/** Reference to a named data set whose rows hold numbers already: nothing in them is to be parsed. */
export const rowsOf = (name: string) => ({ name, format: { parse: null } });
