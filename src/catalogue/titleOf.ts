import type { Catalogue } from '../schema/catalogue.ts';

type Sources = Catalogue['sources'];

const known = new WeakMap<Sources, ReadonlyMap<string, string>>();

/** The title of a source by its id, as people read it; the id itself where no source has it. */
export function titleOf(id: string, sources: Sources): string {
  const titles = known.get(sources) ?? new Map(sources.map((one) => [one.id, one.reference]));
  known.set(sources, titles);
  return titles.get(id) ?? id;
}
