import { useEffect } from 'preact/hooks';
import { go, placeOf } from './places.ts';

/** Follows links to places of the page without loading it anew; every other link is the browser’s. */
export function useLinks(): void {
  useEffect(() => {
    function followed(event: MouseEvent): void {
      if (event.defaultPrevented || event.button !== 0) return;
      if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
      const link = (event.target as Element | null)?.closest?.('a');
      if (link?.target !== '' || link.hasAttribute('download')) return;
      const to = new URL(link.href, location.href);
      if (to.origin !== location.origin || to.hash !== '' || placeOf(to.pathname) === 'nowhere') return;
      event.preventDefault();
      go(`${to.pathname}${to.search}`);
    }
    document.addEventListener('click', followed);
    return () => document.removeEventListener('click', followed);
  }, []);
}
