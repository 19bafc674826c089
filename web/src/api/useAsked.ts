import { useCallback, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from './contract.ts';
import { GoneError, RefusedError, requestJson } from './requestJson.ts';
import { useRetry } from './useRetry.ts';

/** What is known of the answer to what is asked on screen. */
export interface Asked<T> {
  /** The last answer that came, which may belong to an earlier question. */
  readonly answer: T | null;
  /** An answer to the present question is on its way. */
  readonly pending: boolean;
  /** Why there is no answer to the present question. */
  readonly problem: Problem | null;
  /** The server does not answer; it is asked again by itself. */
  readonly gone: boolean;
}

const NOTHING = { answer: null, pending: false, problem: null, gone: false };

/**
 * Keeps an answer in step with a question. The last answer stays until the next one is there; an answer that comes
 * late is dropped.
 * @param question what is posted; null asks nothing
 * @param settleMs changes that follow each other sooner, as while something is dragged, are asked when they rest [ms]
 */
export function useAsked<T>(
  path: string,
  question: object | null,
  settleMs = 0,
): Asked<T> & { retry: () => void } {
  const [state, setState] = useState<Asked<T>>(NOTHING);
  const [attempt, setAttempt] = useState(0);
  const latest = useRef(0);
  const changedMs = useRef(Number.NEGATIVE_INFINITY);
  const body = question === null ? null : JSON.stringify(question);

  // Before the page is drawn with what has changed: the server works meanwhile.
  useLayoutEffect(() => {
    if (body === null) return;
    const number = ++latest.current;
    const stop = new AbortController();
    const now = performance.now();
    const moving = now - changedMs.current < settleMs;
    changedMs.current = now;
    const begin = async () => {
      const next = await ask<T>(path, body, stop.signal);
      if (next === null || number !== latest.current) return;
      setState((before) => ({ ...NOTHING, answer: before.answer, ...next }));
    };
    const timer = moving ? setTimeout(begin, settleMs) : undefined;
    if (!moving) void begin();
    setState((before) => ({ ...before, pending: true }));
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [path, body, settleMs, attempt]);

  const retry = useCallback(() => setAttempt((before) => before + 1), []);
  useRetry(state, retry);
  return { ...state, retry };
}

/** Posts a question; null where it was overtaken. */
async function ask<T>(path: string, body: string, signal: AbortSignal): Promise<Partial<Asked<T>> | null> {
  try {
    const init = { method: 'POST', headers: { 'content-type': 'application/json' }, body, signal };
    return { answer: await requestJson<T>(path, init) };
  } catch (error) {
    if (signal.aborted) return null;
    if (error instanceof RefusedError) return { problem: error.problem };
    if (error instanceof GoneError) return { gone: true };
    throw error;
  }
}
