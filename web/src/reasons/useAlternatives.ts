import { useEffect, useState } from 'preact/hooks';
import type { Alternatives, QuestionInput } from '../api/contract.ts';
import { GoneError, RefusedError, requestJson } from '../api/requestJson.ts';

/** Time without a change before the server is asked: the answer itself comes first. [ms] */
const SETTLE_MS = 500;

interface State {
  /** The question that the rest belongs to. */
  readonly asked: string | null;
  readonly alternatives: Alternatives | null;
  readonly failed: string | null;
}

/**
 * What else could be done about a question; asked only while it is wanted and the question has come to rest. What came
 * for another question is dropped.
 */
export function useAlternatives(question: QuestionInput, wanted: boolean) {
  const [state, setState] = useState<State>({ asked: null, alternatives: null, failed: null });
  const body = JSON.stringify(question);
  useEffect(() => {
    if (!wanted || state.asked === body) return;
    const stop = new AbortController();
    const timer = setTimeout(async () => {
      try {
        const alternatives = await requestJson<Alternatives>('/api/alternatives', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body,
          signal: stop.signal,
        });
        setState({ asked: body, alternatives, failed: null });
      } catch (error) {
        if (stop.signal.aborted) return;
        if (!(error instanceof RefusedError || error instanceof GoneError)) throw error;
        setState({ asked: body, alternatives: null, failed: error.message });
      }
    }, SETTLE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [body, wanted, state.asked]);
  return state.asked === body ? state : { asked: null, alternatives: null, failed: null };
}
