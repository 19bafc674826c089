import { useCallback, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Problem, RegionEvent, RegionInput, RegionRow } from '../api/contract.ts';
import { postForLines } from '../api/postForLines.ts';
import { GoneError, RefusedError } from '../api/requestJson.ts';
import { useRetry } from '../api/useRetry.ts';

type Start = Extract<RegionEvent, { step: 'start' }>;

/** What has come of a region so far. */
export interface RegionAnswer {
  readonly start: Start;
  readonly rows: readonly RegionRow[];
  /** The question it belongs to, as it was posted. */
  readonly asked: string;
}

/** How a region stands. */
export interface RegionState {
  readonly answer: RegionAnswer | null;
  /**
   * waiting: not asked for yet; asking: nothing has come; coming: rows come; ended: all is there; stopped: what was done by
   * then is kept.
   */
  readonly phase: 'waiting' | 'asking' | 'coming' | 'ended' | 'stopped';
  readonly problem: Problem | null;
  readonly gone: boolean;
}

export interface RegionRun extends RegionState {
  /** Whether the answer belongs to the present question. */
  readonly fresh: boolean;
  readonly begin: () => void;
  readonly stop: () => void;
}

/** Changes that follow each other sooner are asked when they rest; time between two drawings of rows. [ms] */
const SETTLE_MS = 250;
const DRAW_MS = 200;

const WAITING: RegionState = { answer: null, phase: 'waiting', problem: null, gone: false };

/**
 * Asks a region and takes its rows as they come. Another question stops the one under way, and its rows are dropped.
 * @param question what is posted; null asks nothing
 * @param atOnce whether it is asked without being told to
 */
export function useRegion(question: RegionInput | null, atOnce: boolean): RegionRun {
  const [state, setState] = useState<RegionState>(WAITING);
  const [begun, setBegun] = useState<{ readonly body: string; readonly attempt: number } | null>(null);
  const under = useRef<AbortController | null>(null);
  const changedMs = useRef(Number.NEGATIVE_INFINITY);
  const body = question === null ? null : JSON.stringify(question);
  const wanted = body !== null && (atOnce || begun?.body === body);
  const attempt = begun?.body === body ? begun?.attempt : 0;

  // Before the page is drawn with what has changed: the server works meanwhile.
  useLayoutEffect(() => {
    if (body === null || !wanted) {
      setState((before) => ({ ...WAITING, answer: before.answer }));
      return;
    }
    const stop = new AbortController();
    under.current = stop;
    const tell = (next: (before: RegionState) => RegionState) => {
      if (under.current === stop) setState(next);
    };
    tell(({ answer }) => ({ answer, phase: 'asking', problem: null, gone: false }));
    const now = performance.now();
    const moving = now - changedMs.current < SETTLE_MS;
    changedMs.current = now;
    const begin = () => void ask(body, stop.signal, tell);
    const timer = moving ? setTimeout(begin, SETTLE_MS) : undefined;
    if (!moving) begin();
    return () => {
      clearTimeout(timer);
      if (under.current === stop) under.current = null;
      stop.abort();
    };
  }, [body, wanted, attempt]);

  const begin = useCallback(() => {
    if (body !== null) setBegun((before) => ({ body, attempt: (before?.attempt ?? 0) + 1 }));
  }, [body]);
  const stop = useCallback(() => under.current?.abort(), []);
  useRetry(state, begin);
  return { ...state, fresh: state.answer !== null && state.answer.asked === body, begin, stop };
}

/**
 * Takes the lines of one answer; draws now and then only, since rows come faster than they can be seen. An earlier answer
 * stays until the first rows are there.
 */
async function ask(
  body: string,
  signal: AbortSignal,
  tell: (next: (before: RegionState) => RegionState) => void,
): Promise<void> {
  let start: Start | null = null;
  let rows: RegionRow[] = [];
  let drawn = 0;
  const show = (phase: RegionState['phase']) => {
    const answer = start && { start, rows, asked: body };
    tell((before) => ({ answer: answer ?? before.answer, phase, problem: null, gone: false }));
  };
  try {
    const events = postForLines<RegionEvent>('/api/region', {
      headers: { 'content-type': 'application/json' },
      body,
      signal,
    });
    for await (const event of events) {
      if (event.step === 'refused') throw new RefusedError(event.problem);
      if (event.step === 'start') {
        start = event;
        const begun: RegionAnswer = { start, rows, asked: body };
        tell((before) => (before.answer === null ? { ...before, answer: begun, phase: 'coming' } : before));
      }
      if (event.step === 'rows') rows = [...rows, ...event.rows];
      if (event.step === 'end') return show('ended');
      if (rows.length > 0 && performance.now() - drawn > DRAW_MS) {
        drawn = performance.now();
        show('coming');
      }
    }
    throw new GoneError('The answer broke off.');
  } catch (error) {
    if (signal.aborted) show('stopped');
    else if (error instanceof RefusedError) {
      const { problem } = error;
      tell(({ answer }) => ({ answer, phase: 'ended', problem, gone: false }));
    } else if (error instanceof GoneError) tell((before) => ({ ...before, phase: 'ended', gone: true }));
    else throw error;
  }
}
