import { useEffect, useRef, useState } from 'preact/hooks';
import type { ChartSpec } from '../../../src/chart/frame.ts';
import type { Drawing, MarkEvents } from './drawing.ts';

interface ChartProps {
  readonly spec: ChartSpec;
  /** A mark was pressed; its row is handed over. */
  readonly onPick?: (row: object) => void;
  /** A mark is pointed at; its row is handed over, and null once it is left. */
  readonly onPoint?: (row: object | null) => void;
}

/** A drawn chart. The drawing code is fetched when the first chart is to be drawn; its room is kept until then. */
export function Chart({ spec, onPick, onPoint }: ChartProps) {
  const room = useRef<HTMLDivElement>(null);
  const [failed, setFailed] = useState(false);
  const latest = useRef({ onPick, onPoint });
  latest.current = { onPick, onPoint };
  const artist = useRef<Artist | null>(null);

  useEffect(() => {
    const element = room.current;
    if (element === null) return;
    const { padding, height } = spec as { padding: { top: number; bottom: number }; height: number };
    element.style.setProperty('--room', `${height + padding.top + padding.bottom}px`);
    artist.current ??= artistFor(element, {
      pick: (row) => latest.current.onPick?.(row),
      point: (row) => latest.current.onPoint?.(row),
    });
    artist.current.show(spec).catch(() => setFailed(true));
  }, [spec]);
  useEffect(() => () => artist.current?.leave(), []);

  return (
    <>
      {failed && <p class="note">The drawing could not be loaded. Its numbers stand in the table below.</p>}
      <div class="drawing" role="img" aria-label={spec.description}>
        <div ref={room} aria-hidden="true" />
      </div>
    </>
  );
}

/** Longest that a drawing waits for the next answer. [ms] */
const LONGEST_WAIT_MS = 1000;

/**
 * Waits until the answer around a drawing is painted: one that is about to be replaced is not worth drawing, and the
 * sentence comes before its charts. Switched units reach drawings a moment before the answer in them is asked for.
 */
async function painted(element: Element): Promise<void> {
  const until = performance.now() + LONGEST_WAIT_MS;
  do {
    await new Promise(requestAnimationFrame);
    await new Promise((afterPainting) => setTimeout(afterPainting));
  } while (element.closest('[data-stale]') !== null && performance.now() < until);
}

interface Artist {
  /** Draws a specification as soon as the one at work is done; what is overtaken meanwhile is left out. */
  readonly show: (spec: ChartSpec) => Promise<void>;
  readonly leave: () => void;
}

function artistFor(element: HTMLElement, events: MarkEvents): Artist {
  let wanted: ChartSpec | null = null;
  let drawing: Drawing | null = null;
  let busy = false;
  let left = false;
  return {
    async show(spec) {
      wanted = spec;
      if (busy) return;
      busy = true;
      try {
        while (wanted !== null && !left) {
          if (drawing) await painted(element);
          const next: ChartSpec = wanted;
          wanted = null;
          if (drawing) await drawing.update(next);
          else drawing = await (await import('./drawing.ts')).draw(element, next, events);
        }
      } finally {
        busy = false;
        if (left) drawing?.remove();
      }
    },
    leave() {
      left = true;
      if (!busy) drawing?.remove();
    },
  };
}
