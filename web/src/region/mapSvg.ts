import { drawnSvg } from '../charts/drawnSvg.ts';

/** Share of the map’s width that a letter of the caption is high. */
const LETTER = 0.024;

/** The map as a file of its own, with what it shows and of what written above and below it. */
export function mapSvg(drawn: SVGSVGElement, caption: string, source: string): string {
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  const { x, y, width, height } = drawn.viewBox.baseVal;
  const size = width * LETTER;
  copy.setAttribute('viewBox', `${x} ${y - 2.4 * size} ${width} ${height + 4.6 * size}`);
  copy.setAttribute('width', '1000');
  copy.setAttribute('font-family', 'sans-serif');
  const write = (text: string, baseline: number, colour: string) => {
    const line = document.createElementNS('http://www.w3.org/2000/svg', 'text');
    line.setAttribute('x', `${x + size}`);
    line.setAttribute('y', `${baseline}`);
    line.setAttribute('font-size', `${size}`);
    line.setAttribute('fill', colour);
    line.textContent = text;
    copy.append(line);
  };
  write(caption, y - size, 'var(--ink)');
  write(source, y + height + 1.4 * size, 'var(--soft-ink)');
  return drawnSvg(copy);
}
