import { nearestNames } from '../catalogue/findNamed.ts';
import { spellingOf } from '../catalogue/spelling.ts';

/** Names offered at most: of many that are equally near none is the one that was meant. */
const OFFERED = 4;

/**
 * What was probably meant by a name that is none of a closed list; null where nothing is near.
 * @example meantOf('lom', ['loam', 'clay']) // 'Did you mean loam?'
 */
export function meantOf(given: string, known: readonly string[]): string | null {
  const nearest = nearestNames(
    spellingOf(given),
    known.map((name) => ({ names: [name], thing: name })),
  );
  return nearest.length === 0 || nearest.length > OFFERED ? null : `Did you mean ${nearest.join(' or ')}?`;
}
