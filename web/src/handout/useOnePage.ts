import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** The page that fits letter and A4 with 15 mm margins: 180 by 249 mm. [px] */
const PAGE_WIDTH_PX = 680;
const PAGE_HEIGHT_PX = 925;
/** Sizes of the letters, largest first; beyond the last the sheet runs on to a second page. */
const LAST_FIT = 5;

/**
 * The largest letters with which an element fits one printed page. It is measured on a copy of the page’s width, so
 * that a narrow screen prints the same page as a wide one.
 */
export function useOnePage<T extends HTMLElement>(...changes: readonly unknown[]) {
  const element = useRef<T>(null);
  const [fit, setFit] = useState(0);
  useLayoutEffect(() => {
    const watched = element.current;
    if (watched === null) return;
    const measure = () => setFit(smallestFit(watched));
    measure();
    // The drawing comes later than the words.
    const watch = new MutationObserver(measure);
    watch.observe(watched, { childList: true, subtree: true });
    return () => watch.disconnect();
  }, changes);
  return { element, fit };
}

function smallestFit(watched: HTMLElement): number {
  const frame = document.createElement('div');
  frame.className = 'handout-measure';
  frame.style.width = `${PAGE_WIDTH_PX}px`;
  const copy = watched.cloneNode(true) as HTMLElement;
  for (const named of copy.querySelectorAll('[id]')) named.removeAttribute('id');
  copy.removeAttribute('data-testid');
  frame.append(copy);
  document.body.append(frame);
  let fit = 0;
  for (; fit < LAST_FIT; fit++) {
    copy.dataset.fit = `${fit}`;
    if (copy.getBoundingClientRect().height <= PAGE_HEIGHT_PX) break;
  }
  frame.remove();
  return fit;
}
