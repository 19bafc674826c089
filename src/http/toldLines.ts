import type { Problem } from '../schema/answer.ts';
import { unforeseenLine } from './guard/logLine.ts';
import { problemOf } from './problem.ts';

/** Work that tells of itself, and the way to stop it. */
export interface ToldWork<Event> {
  readonly work: (tell: (event: Event) => void) => Promise<void>;
  readonly stop: () => void;
  readonly log: (line: string) => void;
}

/** Answers with what work tells, one JSON object a line, a refusal the last of them; a reader who leaves stops it. */
export function toldLines<Event>({
  work,
  stop,
  log,
}: ToldWork<Event | { readonly step: 'refused'; readonly problem: Problem }>): Response {
  const text = new TextEncoder();
  let left = false;
  const lines = new ReadableStream<Uint8Array>({
    async start(controller) {
      const tell = (event: Event | { readonly step: 'refused'; readonly problem: Problem }) => {
        if (!left) controller.enqueue(text.encode(`${JSON.stringify(event)}\n`));
      };
      try {
        await work(tell);
      } catch (error) {
        const { status, problem } = problemOf(error);
        if (status >= 500) log(unforeseenLine(error));
        tell({ step: 'refused', problem });
      }
      if (!left) controller.close();
    },
    cancel() {
      left = true;
      stop();
    },
  });
  return new Response(lines, {
    headers: { 'Content-Type': 'application/x-ndjson', 'Cache-Control': 'no-store' },
  });
}
