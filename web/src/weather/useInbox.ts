import { useEffect, useRef, useState } from 'preact/hooks';
import { type InboxState, presentInbox, watchInbox } from './inboxQueue.ts';

/**
 * The files on their way into the store, kept up to date.
 * @param imported called after each file that changed the store
 */
export function useInbox(imported: () => void): InboxState {
  const [state, setState] = useState(presentInbox);
  useEffect(() => {
    setState(presentInbox());
    return watchInbox(setState);
  }, []);
  const seen = useRef(state.imported);
  useEffect(() => {
    if (seen.current === state.imported) return;
    seen.current = state.imported;
    imported();
  });
  return state;
}
