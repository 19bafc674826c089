import { type CatalogueAddress, catalogueAddress } from './catalogueAddress.ts';

interface DifferencesProps {
  readonly notes: readonly { readonly crop: string; readonly disagreement: string }[];
  readonly at: CatalogueAddress;
}

/** Where sources conflict: both stay, the longer governs. */
export function Differences({ notes, at }: DifferencesProps) {
  if (notes.length === 0) return null;
  return (
    <section class="differences" aria-labelledby="differences-title">
      <h2 id="differences-title">Where the sources differ</h2>
      <ul>
        {notes.map(({ crop, disagreement }) => (
          <li key={crop}>
            <a href={catalogueAddress({ ...at, crop })}>{crop}</a> <span>{disagreement}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
