/** Text of a drawing on its own: colours of the page’s style sheet written out, so that it looks alike anywhere. */
export function drawnSvg(drawn: SVGSVGElement): string {
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  const page = getComputedStyle(document.documentElement);
  const paper = page.getPropertyValue('--paper').trim();
  copy.style.background = paper;
  return new XMLSerializer()
    .serializeToString(copy)
    .replaceAll(/var\((--[\w-]+)\)/g, (_, name: string) => page.getPropertyValue(name).trim());
}
