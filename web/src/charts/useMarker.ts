import { useRef } from 'preact/hooks';
import type { Entry } from '../shell/useAddress.ts';

/** The ways in which the planting marker is moved. */
export interface MarkerMoves {
  /** The marker passes over a date; the address is replaced. */
  readonly drag: (plantOn: string) => void;
  /** The marker is let go; the address is pushed. */
  readonly release: () => void;
  /** One step to a date. */
  readonly commit: (plantOn: string) => void;
  readonly dragging: () => boolean;
}

/** What a change of the planting date does to the page’s history. */
export type Move = (plantOn: string, entry: Entry) => void;

/** A drag under way: where it began, where it is, and the frame in which the page follows. */
interface Drag {
  readonly from: string;
  to: string;
  frame: number;
}

/**
 * Keeps the history tidy while the marker is dragged: the entry it started from comes back in its place when
 * the marker is let go, and the new date becomes one new entry. The page follows once a frame at most.
 */
export function useMarker(plantOn: string, move: Move): MarkerMoves {
  const drag = useRef<Drag | null>(null);
  const latest = useRef(move);
  latest.current = move;
  const end = () => {
    if (drag.current) cancelAnimationFrame(drag.current.frame);
    drag.current = null;
  };
  return {
    drag(date) {
      drag.current ??= { from: plantOn, to: plantOn, frame: 0 };
      const under = drag.current;
      under.to = date;
      if (under.frame !== 0) return;
      under.frame = requestAnimationFrame(() => {
        under.frame = 0;
        latest.current(under.to, 'drag');
      });
    },
    release() {
      const under = drag.current;
      end();
      if (under === null) return;
      latest.current(under.from, 'replace');
      if (under.from !== under.to) latest.current(under.to, 'push');
    },
    commit(date) {
      end();
      if (date !== plantOn) latest.current(date, 'push');
    },
    dragging: () => drag.current !== null,
  };
}
