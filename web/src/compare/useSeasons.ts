import { useEffect, useRef, useState } from 'preact/hooks';
import type { Answer, QuestionInput } from '../api/contract.ts';
import { requestJson } from '../api/requestJson.ts';

/** Answers kept, so that a residual ticked off and on again is there at once. */
const KEPT = 12;

/** The seasons asked for. */
export interface Seasons {
  /** The last full set that came; it may belong to an earlier choice while the next is on its way. */
  readonly answers: readonly Answer[];
  readonly pending: boolean;
  /** At least one could not be had. */
  readonly failed: boolean;
}

/**
 * Answers with their curves to a few questions at once; what comes late is kept under its own question only.
 * @param ready false while something more urgent is asked of the server
 */
export function useSeasons(questions: readonly QuestionInput[], ready: boolean): Seasons {
  const [known, setKnown] = useState<ReadonlyMap<string, Answer | null>>(new Map());
  const last = useRef<readonly Answer[]>([]);
  const bodies = questions.map((question) => JSON.stringify(question));
  const wanted = bodies.join('\n');

  useEffect(() => {
    if (!ready) return;
    const stop = new AbortController();
    const ask = () => {
      for (const body of bodies) {
        if (known.get(body)) continue;
        const init = {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body,
          signal: stop.signal,
        };
        const keep = (answer: Answer | null) =>
          setKnown((before) => new Map([...[...before].slice(1 - KEPT), [body, answer]]));
        requestJson<Answer>('/api/odds?with=season', init).then(keep, () => {
          if (!stop.signal.aborted) keep(null);
        });
      }
    };
    // After the frame: when the question changes, what is more urgent is asked in between, and this is called off.
    let timer: ReturnType<typeof setTimeout> | undefined;
    const frame = requestAnimationFrame(() => {
      timer = setTimeout(ask);
    });
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
      stop.abort();
    };
  }, [wanted, ready]);

  const found = bodies.map((body) => known.get(body));
  const answers = found.filter((answer): answer is Answer => answer != null);
  if (answers.length === bodies.length) last.current = answers;
  return {
    answers: last.current,
    pending: found.includes(undefined),
    failed: found.includes(null),
  };
}
