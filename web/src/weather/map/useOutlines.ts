import { useEffect, useState } from 'preact/hooks';
import outlinesUrl from 'us-atlas/states-albers-10m.json?url';
import { type Outlines, outlinesOf, type Topology } from './outlines.ts';

/** The outlines, fetched from the page's own files; null until they are there. */
export function useOutlines(): Outlines | null {
  const [outlines, setOutlines] = useState<Outlines | null>(null);
  useEffect(() => {
    const stop = new AbortController();
    fetch(outlinesUrl, { signal: stop.signal })
      .then(async (response) => setOutlines(outlinesOf((await response.json()) as Topology)))
      .catch(() => undefined);
    return () => stop.abort();
  }, []);
  return outlines;
}
