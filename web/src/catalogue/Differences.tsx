import { type CatalogueAddress, catalogueAddress } from './catalogueAddress.ts';

interface Note {
  readonly crop: string;
  readonly disagreement: string;
}

/** Where sources conflict: both stay, the longer governs. Crops with the same conflict stand together. */
export function Differences({ notes, at }: { notes: readonly Note[]; at: CatalogueAddress }) {
  if (notes.length === 0) return null;
  return (
    <section class="differences" aria-labelledby="differences-title" data-testid="differences">
      <h2 id="differences-title">Where the sources differ</h2>
      <ul>
        {together(notes).map(({ crops, words }) => (
          <li key={words}>
            <p>{words}</p>
            <ul class="names">
              {crops.map((crop) => (
                <li key={crop}>
                  <a href={catalogueAddress({ ...at, crop })}>{crop}</a>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Conflicts by their words, the crop's own name left out of them. */
function together(notes: readonly Note[]): { words: string; crops: string[] }[] {
  const byWords = new Map<string, string[]>();
  for (const { crop, disagreement } of notes) {
    const words = disagreement.replace(` to ${crop};`, ';').replace(` to ${crop}.`, '.');
    byWords.set(words, [...(byWords.get(words) ?? []), crop]);
  }
  return [...byWords].map(([words, crops]) => ({ words, crops }));
}
