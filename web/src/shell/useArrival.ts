import { useEffect, useRef } from 'preact/hooks';

/** A heading may still be on its way from the server. [ms] */
const LONGEST_MS = 5000;

/**
 * On coming to another view: to its top, and the focus to its heading as soon as that is there, so that readers of
 * the screen hear where they are. The first view of a load is left alone.
 * @param view what tells one view from another
 */
export function useArrival(view: string): void {
  const last = useRef(view);
  useEffect(() => {
    if (last.current === view) return;
    last.current = view;
    window.scrollTo(0, 0);
    const arrive = () => {
      const heading = document.querySelector<HTMLElement>('main h1');
      if (heading === null) return false;
      heading.tabIndex = -1;
      heading.focus({ preventScroll: true });
      return true;
    };
    let timer = 0;
    const watch = new MutationObserver(() => arrive() && end());
    const end = () => {
      clearTimeout(timer);
      watch.disconnect();
    };
    // The heading that still stands belongs to the view that was left; the new one is drawn by then.
    timer = window.setTimeout(() => {
      if (arrive()) return;
      watch.observe(document.body, { childList: true, subtree: true });
      timer = window.setTimeout(end, LONGEST_MS);
    }, 0);
    return end;
  }, [view]);
}
