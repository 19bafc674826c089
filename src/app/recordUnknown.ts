import { MissingDataError } from '../errors.ts';
import { meantOf } from './meant.ts';

/** The refusal of an id that no kept record has; the hint names the one that was probably meant, or where all stand. */
export const recordUnknown = (
  { code, noun, listed }: { readonly code: string; readonly noun: string; readonly listed: string },
  id: string,
  known: readonly string[],
): MissingDataError =>
  new MissingDataError(code, `There is no ${noun} "${id}".`, {
    hint: meantOf(id, known) ?? listed,
    details: { id },
  });
