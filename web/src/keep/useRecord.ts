import { useEffect, useRef, useState } from 'preact/hooks';
import { type DeskState, RecordDesk } from './RecordDesk.ts';
import type { ShelfPath } from './shelf.ts';

/** A record under the pen, from the server and back; what is being typed is taken in when the page is left. */
export function useRecord<T extends { readonly id: string }>(shelf: ShelfPath, id: string) {
  const [state, setState] = useState<DeskState<T> | null>(null);
  const desk = useRef<RecordDesk<T> | null>(null);
  useEffect(() => {
    const opened = new RecordDesk<T>(shelf, id, setState);
    desk.current = opened;
    void opened.open();
    // A blank is read when it is left, and leaving the page is leaving the blank.
    const leave = () => (document.activeElement as HTMLElement | null)?.blur?.();
    window.addEventListener('pagehide', leave);
    return () => {
      window.removeEventListener('pagehide', leave);
      opened.close();
    };
  }, [shelf, id]);
  return state === null || desk.current === null ? null : { ...state, desk: desk.current };
}

export type OpenRecord<T extends { readonly id: string }> = DeskState<T> & { readonly desk: RecordDesk<T> };
