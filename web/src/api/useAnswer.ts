import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Answer, Problem, QuestionInput } from './contract.ts';
import { GoneError, RefusedError, requestJson } from './requestJson.ts';

/** What is known of the answer to the question on screen. */
export interface AnswerState {
  /** The last answer that came, which may belong to an earlier question. */
  readonly answer: Answer | null;
  /** An answer to the present question is on its way. */
  readonly pending: boolean;
  /** Why there is no answer to the present question. */
  readonly problem: Problem | null;
  /** The server does not answer; it is asked again by itself. */
  readonly gone: boolean;
}

/** Time without a change before the server is asked. [ms] */
const SETTLE_MS = 90;
/** Time before a server that is gone is asked again. [ms] */
const RETRY_MS = 4000;

const NOTHING: AnswerState = { answer: null, pending: false, problem: null, gone: false };

/**
 * Keeps the answer in step with the question. The last answer stays until the next one is there; an answer
 * that comes late is dropped.
 */
export function useAnswer(question: QuestionInput | null): AnswerState & { retry: () => void } {
  const [state, setState] = useState(NOTHING);
  const [attempt, setAttempt] = useState(0);
  const latest = useRef(0);
  const body = question === null ? null : JSON.stringify(question);

  useEffect(() => {
    if (body === null) return;
    const number = ++latest.current;
    const stop = new AbortController();
    setState((before) => ({ ...before, pending: true }));
    const timer = setTimeout(async () => {
      const next = await ask(body, stop.signal);
      if (next === null || number !== latest.current) return;
      setState((before) => ({ ...NOTHING, answer: before.answer, ...next }));
    }, SETTLE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [body, attempt]);

  const retry = useCallback(() => setAttempt((before) => before + 1), []);
  useEffect(() => {
    if (!state.gone) return;
    const timer = setTimeout(retry, RETRY_MS);
    return () => clearTimeout(timer);
  }, [state, retry]);
  return { ...state, retry };
}

async function ask(body: string, signal: AbortSignal): Promise<Partial<AnswerState> | null> {
  try {
    const init = { method: 'POST', headers: { 'content-type': 'application/json' }, body, signal };
    return { answer: await requestJson<Answer>('/api/odds?with=season', init) };
  } catch (error) {
    if (signal.aborted) return null;
    if (error instanceof RefusedError) return { problem: error.problem };
    if (error instanceof GoneError) return { gone: true };
    throw error;
  }
}
