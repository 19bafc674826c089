import { useEffect, useState } from 'preact/hooks';
import { takeEarly } from './askedEarly.ts';
import type { Choices, Example } from './contract.ts';

/** What the page needs before it can show a question. */
export interface Start {
  readonly example: Example;
  readonly choices: Choices;
}

export const EXAMPLE = '/api/example';
export const CHOICES = '/api/choices';

/** Time before a server that is gone is asked again. [ms] */
const RETRY_MS = 3000;

/** Fetches the worked example and the choices, again and again until the server answers. */
export function useStart(): { start: Start | null; gone: boolean } {
  const [start, setStart] = useState<Start | null>(null);
  const [attempt, setAttempt] = useState(0);

  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let left = false;
    Promise.all([takeEarly<Example>(EXAMPLE), takeEarly<Choices>(CHOICES)]).then(
      ([example, choices]) => {
        if (!left) setStart({ example, choices });
      },
      () => {
        if (!left) timer = setTimeout(() => setAttempt((before) => before + 1), RETRY_MS);
      },
    );
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, [attempt]);
  return { start, gone: start === null && attempt > 0 };
}
