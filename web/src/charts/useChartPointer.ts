import { useRef } from 'preact/hooks';
import { MS_PER_DAY } from '../../../src/chart/dateMs.ts';
import type { Ruler } from '../../../src/chart/ruler.ts';
import { isoOf } from '../question/calendar.ts';
import type { MarkerMoves } from './useMarker.ts';

/**
 * Lets the marker be put down anywhere on a chart of the ruler: by a tap, or by dragging with a mouse or pen.
 * A finger that moves scrolls the page instead.
 */
export function useChartPointer(ruler: Ruler, earliest: string, moves: MarkerMoves) {
  const down = useRef(false);

  function dateAt(event: { clientX: number; currentTarget: EventTarget | null }): string {
    const { left } = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const share = (event.clientX - left - ruler.leftPx) / ruler.widthPx;
    const ms = ruler.fromMs + Math.min(1, Math.max(0, share)) * (ruler.toMs - ruler.fromMs);
    const date = isoOf(Math.round(ms / MS_PER_DAY));
    return date < earliest ? earliest : date;
  }

  return {
    onPointerDown(event: PointerEvent) {
      if (event.pointerType === 'touch' || event.button !== 0) return;
      down.current = true;
      (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
      moves.drag(dateAt(event));
    },
    onPointerMove(event: PointerEvent) {
      if (down.current) moves.drag(dateAt(event));
    },
    onPointerUp() {
      if (down.current) moves.release();
      down.current = false;
    },
    onPointerCancel() {
      if (down.current) moves.release();
      down.current = false;
    },
    onClick(event: MouseEvent) {
      if ((event as PointerEvent).pointerType === 'touch') moves.commit(dateAt(event));
    },
  };
}
