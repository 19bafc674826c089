import type { Catalogue } from '../schema/catalogue.ts';

/** Ids of sources in brackets, as catalogue texts cite them: "(S31, S32)". */
const CITATION = / \(([SM]\d{2,3}(?:, [SM]\d{2,3})*)\)/g;

/** A catalogue text without its source ids, and the titles that they stand for. */
export function citedSources(text: string, { sources }: Catalogue): { text: string; sources: string[] } {
  const ids = [...text.matchAll(CITATION)].flatMap(([, list]) => list.split(', '));
  return {
    text: text.replace(CITATION, ''),
    sources: sources.filter(({ id }) => ids.includes(id)).map(({ reference }) => reference),
  };
}

/** Ids of sources that a text names, wherever in it. */
export const sourceIdsIn = (text: string): readonly string[] => text.match(/\b[SM]\d{2,3}\b/g) ?? [];
