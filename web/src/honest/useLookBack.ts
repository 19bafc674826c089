import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Answer, Hindcast, Problem } from '../api/contract.ts';
import { GoneError, RefusedError, requestJson } from '../api/requestJson.ts';
import { useRetry } from '../api/useRetry.ts';

type Asked = Answer['inputs']['question'];

interface State {
  /** The last figures that came, and the question they belong to, as it was posted. */
  readonly found: { readonly hindcast: Hindcast; readonly body: string } | null;
  /** waiting: not asked for; asking: on its way; ended: figures or a refusal are there; stopped: given up by the user. */
  readonly phase: 'waiting' | 'asking' | 'ended' | 'stopped';
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

const WAITING = { phase: 'waiting', problem: null, gone: false } as const;

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
    void ask(body, stop.signal).then((next) => {
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

async function ask(body: string, signal: AbortSignal): Promise<Partial<State>> {
  try {
    const init = { method: 'POST', headers: { 'content-type': 'application/json' }, body, signal };
    const hindcast = await requestJson<Hindcast>('/api/hindcast', init);
    return { phase: 'ended', found: { hindcast, body } };
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
