import { useEffect } from 'preact/hooks';

/** Names the page in the browser. */
export function useTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} · Drywake`;
  }, [title]);
}
