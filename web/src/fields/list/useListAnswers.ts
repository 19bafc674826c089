import { useEffect, useRef, useState } from 'preact/hooks';
import type { Batch, BatchEvent, Problem } from '../../api/contract.ts';
import { postForLines } from '../../api/postForLines.ts';
import { GoneError, RefusedError } from '../../api/requestJson.ts';

/** How a list of fields stands. */
export type ListState =
  | { readonly kind: 'none' }
  | { readonly kind: 'asking'; readonly name: string; readonly done: number; readonly of: number | null }
  | { readonly kind: 'answered'; readonly batch: Batch; readonly csv: string }
  | { readonly kind: 'refused'; readonly problem: Problem }
  | { readonly kind: 'stopped'; readonly name: string }
  | { readonly kind: 'gone' };

export interface ListAnswers {
  readonly state: ListState;
  /** Sends a list; one on its way is stopped. */
  readonly send: (file: File) => void;
  readonly stop: () => void;
}

/** Sends lists of fields and keeps what becomes of the last one. */
export function useListAnswers(): ListAnswers {
  const [state, setState] = useState<ListState>({ kind: 'none' });
  const under = useRef<AbortController | null>(null);
  useEffect(() => () => under.current?.abort(), []);

  async function ask(file: File, stop: AbortController): Promise<void> {
    const tell = (next: ListState) => {
      if (under.current === stop) setState(next);
    };
    tell({ kind: 'asking', name: file.name, done: 0, of: null });
    try {
      tell(
        await answered(file, stop.signal, (done, of) => tell({ kind: 'asking', name: file.name, done, of })),
      );
    } catch (error) {
      if (stop.signal.aborted) tell({ kind: 'stopped', name: file.name });
      else if (error instanceof RefusedError) tell({ kind: 'refused', problem: error.problem });
      else if (error instanceof GoneError) tell({ kind: 'gone' });
      else throw error;
    }
  }
  return {
    state,
    stop: () => under.current?.abort(),
    send(file) {
      under.current?.abort();
      under.current = new AbortController();
      void ask(file, under.current);
    },
  };
}

/** @throws {RefusedError | GoneError} */
async function answered(
  file: File,
  signal: AbortSignal,
  progress: (done: number, of: number) => void,
): Promise<ListState> {
  const events = postForLines<BatchEvent>(`/api/batch?${new URLSearchParams({ name: file.name })}`, {
    headers: { 'content-type': 'text/csv' },
    body: file,
    signal,
  });
  for await (const event of events) {
    if (event.step === 'end') return { kind: 'answered', batch: event.batch, csv: event.csv };
    if (event.step === 'refused') throw new RefusedError(event.problem);
    progress(event.step === 'start' ? 0 : event.done, event.of);
  }
  throw new GoneError('The answer broke off.');
}
