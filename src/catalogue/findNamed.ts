import { InvalidInputError } from '../errors.ts';
import { editDistance, spellingOf } from './spelling.ts';

/** A thing that answers to several names; the first is its own. */
export interface Named<T> {
  readonly names: readonly string[];
  readonly thing: T;
}

/** Things by all their names. */
export interface NameBook<T> {
  readonly things: readonly Named<T>[];
  readonly bySpelling: ReadonlyMap<string, T>;
}

const books = new WeakMap<object, NameBook<unknown>>();

/** The names of a list of the catalogue, spelled out once; such a list never changes. */
export function namesOf<T>(list: readonly T[], namesOfOne: (thing: T) => readonly string[]): NameBook<T> {
  const found = books.get(list) as NameBook<T> | undefined;
  if (found) return found;
  const things = list.map((thing) => ({ names: namesOfOne(thing), thing }));
  const bySpelling = new Map<string, T>();
  for (const { names, thing } of things) {
    for (const name of names) {
      if (!bySpelling.has(spellingOf(name))) bySpelling.set(spellingOf(name), thing);
    }
  }
  const book = { things, bySpelling };
  books.set(list, book);
  return book;
}

/** A slip is at most a third of the letters, and never more than three. */
const slipLimit = (name: string): number => Math.min(3, Math.max(1, Math.floor(name.length / 3)));

/**
 * The thing of that name, whatever the case, blanks or hyphens.
 * @param what what is looked for, as the message says it
 * @throws {InvalidInputError} with the given code; its hint names the nearest spelling, or all names
 */
export function findNamed<T>(
  what: string,
  code: string,
  name: string,
  { things, bySpelling }: NameBook<T>,
): T {
  const asked = spellingOf(name);
  const found = bySpelling.get(asked);
  if (found !== undefined) return found;

  const all = things.map(({ names }) => names[0]);
  const nearest = nearestNames(asked, things);
  throw new InvalidInputError(code, `The catalogue has no ${what} "${name}".`, {
    hint: nearest.length > 0 ? `Did you mean ${nearest.join(' or ')}?` : `It has ${all.join(', ')}.`,
    details: { given: name, nearest, known: all },
  });
}

/** Own names of the things nearest in spelling; none where all are too far off. */
export function nearestNames<T>(asked: string, things: readonly Named<T>[]): string[] {
  const most = slipLimit(asked);
  // Names whose lengths differ by more need more slips: a long text is not compared at all.
  const slipsTo = (known: string) =>
    Math.abs(known.length - asked.length) > most ? Number.POSITIVE_INFINITY : editDistance(asked, known);
  const near = things.map(({ names }) => ({
    name: names[0],
    slips: Math.min(...names.map((known) => slipsTo(spellingOf(known)))),
  }));
  const fewest = Math.min(...near.map(({ slips }) => slips));
  return fewest <= most ? near.filter(({ slips }) => slips === fewest).map(({ name }) => name) : [];
}
