import { useLayoutEffect, useRef } from 'preact/hooks';

/** The page that fits letter and A4 with 15 mm margins: 180 by 249 mm, less a line to spare. [px] */
export const PAGE_WIDTH_PX = 680;
const PAGE_HEIGHT_PX = 930;
/** Sizes of the letters, from the largest on; under the last the sheet runs on to a second page. [px] */
const LARGEST_PX = 14;
const SMALLEST_PX = 9.5;
const STEP_PX = 0.25;

/**
 * Gives an element the largest letters with which it fits one printed page. They are tried on a copy of the page’s
 * width, so that a narrow screen prints the same page as a wide one.
 */
export function useOnePage<T extends HTMLElement>(...changes: readonly unknown[]) {
  const element = useRef<T>(null);
  useLayoutEffect(() => {
    const watched = element.current;
    if (watched === null) return;
    const adjust = () => watched.style.setProperty('--fit', `${fittingLettersPx(watched)}px`);
    adjust();
    document.fonts.ready.then(adjust);
    // The drawing comes later than the words.
    const watch = new MutationObserver(adjust);
    watch.observe(watched, { childList: true, subtree: true });
    return () => watch.disconnect();
  }, changes);
  return element;
}

function fittingLettersPx(watched: HTMLElement): number {
  const frame = document.createElement('div');
  frame.className = 'handout-measure';
  frame.style.width = `${PAGE_WIDTH_PX}px`;
  const copy = watched.cloneNode(true) as HTMLElement;
  for (const named of copy.querySelectorAll('[id]')) named.removeAttribute('id');
  for (const named of [copy, ...copy.querySelectorAll('[data-testid]')]) named.removeAttribute('data-testid');
  frame.append(copy);
  document.body.append(frame);
  let px = LARGEST_PX;
  for (; px > SMALLEST_PX; px -= STEP_PX) {
    copy.style.setProperty('--fit', `${px}px`);
    if (copy.getBoundingClientRect().height <= PAGE_HEIGHT_PX) break;
  }
  frame.remove();
  return px;
}
