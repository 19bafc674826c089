import { useCallback, useEffect, useState } from 'preact/hooks';
import type { Problem } from './contract.ts';
import { RefusedError, requestJson } from './requestJson.ts';

/** Time before a server that is gone is asked again. [ms] */
const RETRY_MS = 3000;

/** What is known of something the server holds. */
export interface Fetched<T> {
  /** The last that came for this path; null before. */
  readonly data: T | null;
  readonly problem: Problem | null;
  /** The server does not answer; it is asked again by itself. */
  readonly gone: boolean;
  readonly reload: () => void;
}

interface State<T> {
  readonly path: string | null;
  readonly data: T | null;
  readonly problem: Problem | null;
  readonly gone: boolean;
}

const NOTHING = { path: null, data: null, problem: null, gone: false };

/** Fetches a path of the server; null fetches nothing. What came for another path is dropped. */
export function useFetched<T>(path: string | null): Fetched<T> {
  const [state, setState] = useState<State<T>>(NOTHING);
  const [attempt, setAttempt] = useState(0);
  useEffect(() => {
    if (path === null) return;
    const stop = new AbortController();
    let timer: ReturnType<typeof setTimeout> | undefined;
    requestJson<T>(path, { signal: stop.signal }).then(
      (data) => setState({ ...NOTHING, path, data }),
      (error: unknown) => {
        if (stop.signal.aborted) return;
        if (error instanceof RefusedError) {
          setState({ ...NOTHING, path, problem: error.problem });
          return;
        }
        setState((before) => ({ ...(before.path === path ? before : { ...NOTHING, path }), gone: true }));
        timer = setTimeout(() => setAttempt((before) => before + 1), RETRY_MS);
      },
    );
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [path, attempt]);
  const reload = useCallback(() => setAttempt((before) => before + 1), []);
  const { data, problem, gone } = state.path === path ? state : NOTHING;
  return { data, problem, gone, reload };
}
