import { useEffect } from 'preact/hooks';

/** Time before a server that is gone is asked again. [ms] */
const RETRY_MS = 4000;

/** Asks again after a while where the server was gone. @param state a new one for each answer, gone or not */
export function useRetry(state: { readonly gone: boolean }, again: () => void): void {
  useEffect(() => {
    if (!state.gone) return;
    const timer = setTimeout(again, RETRY_MS);
    return () => clearTimeout(timer);
  }, [state, again]);
}
