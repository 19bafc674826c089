import { parse, View } from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';

/** Draws a chart as SVG, without a browser; marked as an image whose text is the caption. */
export async function chartSvg(spec: TopLevelSpec, caption: string): Promise<string> {
  const svg = await new View(parse(compile(spec).spec), { renderer: 'none' }).toSVG();
  const label = caption.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
  return svg.replace('<svg ', `<svg role="img" aria-label="${label}" `);
}
