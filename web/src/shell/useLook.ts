import { useCallback } from 'preact/hooks';
import type { QuestionInput } from '../api/contract.ts';
import type { Entry, Held } from './useHeldAddress.ts';

/**
 * The two ways to change what a place asks: `look` any part of it, `change` the question in it.
 * @param usual how `look` enters the history where it is not told
 */
export function useLook<Asked extends { readonly question: QuestionInput }>(
  { set }: Held<Asked>,
  asked: Asked,
  usual: Entry,
) {
  const look = useCallback(
    (part: Partial<Asked>, entry: Entry = usual) => set({ ...asked, ...part }, entry),
    [asked, set, usual],
  );
  const change = useCallback(
    (part: Partial<QuestionInput>) => set({ ...asked, question: { ...asked.question, ...part } }, 'push'),
    [asked, set],
  );
  return { look, change };
}
