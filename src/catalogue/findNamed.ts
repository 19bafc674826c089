import { InvalidInputError } from '../errors.ts';
import { editDistance, spellingOf } from './spelling.ts';

/** A thing that answers to several names; the first is its own. */
export interface Named<T> {
  readonly names: readonly string[];
  readonly thing: T;
}

/** A slip is at most a third of the letters, and never more than three. */
const slipLimit = (name: string): number => Math.min(3, Math.max(1, Math.floor(name.length / 3)));

/**
 * The thing of that name, whatever the case, blanks or hyphens.
 * @param what what is looked for, as the message says it
 * @throws {InvalidInputError} with the given code; its hint names the nearest spelling, or all names
 */
export function findNamed<T>(what: string, code: string, name: string, things: readonly Named<T>[]): T {
  const asked = spellingOf(name);
  const found = things.find(({ names }) => names.some((known) => spellingOf(known) === asked));
  if (found !== undefined) return found.thing;

  const all = things.map(({ names }) => names[0]);
  const nearest = nearestNames(asked, things);
  throw new InvalidInputError(code, `The catalogue has no ${what} "${name}".`, {
    hint: nearest.length > 0 ? `Did you mean ${nearest.join(' or ')}?` : `It has ${all.join(', ')}.`,
    details: { given: name, nearest, known: all },
  });
}

function nearestNames<T>(asked: string, things: readonly Named<T>[]): string[] {
  const near = things.map(({ names }) => ({
    name: names[0],
    slips: Math.min(...names.map((known) => editDistance(asked, spellingOf(known)))),
  }));
  const fewest = Math.min(...near.map(({ slips }) => slips));
  return fewest <= slipLimit(asked)
    ? near.filter(({ slips }) => slips === fewest).map(({ name }) => name)
    : [];
}
