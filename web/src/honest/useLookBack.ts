import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Answer, Hindcast, HindcastEvent, Problem } from '../api/contract.ts';
import { postForLines } from '../api/postForLines.ts';
import { GoneError, RefusedError } from '../api/requestJson.ts';
import { useRetry } from '../api/useRetry.ts';

type Asked = Answer['inputs']['question'];

interface State {
  /** The last figures that came, and the question they belong to, as it was posted. */
  readonly found: { readonly hindcast: Hindcast; readonly body: string } | null;
  /** waiting: not asked for; asking: on its way; ended: figures or a refusal are there; stopped: given up by the user. */
  readonly phase: 'waiting' | 'asking' | 'ended' | 'stopped';
  /** Past years done, of all; null before the first is. */
  readonly progress: { readonly done: number; readonly of: number } | null;
  readonly problem: Problem | null;
  readonly gone: boolean;
}

export interface LookBackRun extends Omit<State, 'found'> {
  readonly hindcast: Hindcast | null;
  /** Whether the figures belong to the present question. */
  readonly fresh: boolean;
  readonly begin: () => void;
  readonly stop: () => void;
}

const WAITING = { phase: 'waiting', progress: null, problem: null, gone: false } as const;

/**
 * Looks back on past years of a question: at once, and again when told to. Another question stops what is under way, and
 * what comes of it is dropped.
 */
export function useLookBack(question: Asked): LookBackRun {
  const body = JSON.stringify(lookedBackOn(question));
  const [state, setState] = useState<State>({ found: null, ...WAITING });
  const [begun, setBegun] = useState({ body, attempt: 0 });
  const under = useRef<AbortController | null>(null);
  const attempt = begun.body === body ? begun.attempt : null;

  useEffect(() => {
    if (attempt === null) {
      setState(({ found }) => ({ found, ...WAITING }));
      return;
    }
    const stop = new AbortController();
    under.current = stop;
    setState(({ found }) => ({ found, ...WAITING, phase: 'asking' }));
    const tell = (progress: State['progress']) => {
      if (under.current === stop) setState((before) => ({ ...before, progress }));
    };
    void ask(body, stop.signal, tell).then((next) => {
      if (under.current === stop) setState(({ found }) => ({ found, ...WAITING, ...next }));
    });
    return () => {
      if (under.current === stop) under.current = null;
      stop.abort();
    };
  }, [body, attempt]);

  const begin = useCallback(
    () => setBegun((before) => ({ body, attempt: before.body === body ? before.attempt + 1 : 0 })),
    [body],
  );
  const stop = useCallback(() => under.current?.abort(), []);
  useRetry(state, begin);
  const { found, ...rest } = state;
  return { ...rest, hindcast: found?.hindcast ?? null, fresh: found?.body === body, begin, stop };
}

async function ask(
  body: string,
  signal: AbortSignal,
  tell: (progress: State['progress']) => void,
): Promise<Partial<State>> {
  try {
    const headers = { 'content-type': 'application/json', accept: 'application/x-ndjson' };
    for await (const event of postForLines<HindcastEvent>('/api/hindcast', { headers, body, signal })) {
      if (event.step === 'progress') tell({ done: event.done, of: event.of });
      if (event.step === 'refused') return { phase: 'ended', problem: event.problem };
      if (event.step === 'end') return { phase: 'ended', found: { hindcast: event.hindcast, body } };
    }
    return { phase: 'ended', gone: true };
  } catch (error) {
    if (signal.aborted) return { phase: 'stopped' };
    if (error instanceof RefusedError) return { phase: 'ended', problem: error.problem };
    if (error instanceof GoneError) return { phase: 'ended', gone: true };
    throw error;
  }
}

/** What is posted: the question without what is known only of its own season, which a look back leaves aside. */
function lookedBackOn({
  asOf: _asOf,
  outlook: _outlook,
  gauge: _gauge,
  irrigation: _irrigation,
  evidence: _evidence,
  restOfSeasonRain: _rest,
  ...question
}: Asked): object {
  return question;
}
