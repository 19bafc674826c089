import { go } from '../shell/places.ts';
import { type CatalogueAddress, type Country, catalogueAddress } from './catalogueAddress.ts';

const NAMES: Record<Country, string> = { US: 'United States', CA: 'Canada' };

/** Whose labels count: rows of other countries stand beside as evidence and set no date. */
export function CountrySwitch({ at }: { at: CatalogueAddress }) {
  return (
    <fieldset class="switch">
      <legend class="unseen">Country of the field</legend>
      {(['US', 'CA'] as const).map((country) => (
        <button
          key={country}
          type="button"
          aria-pressed={at.country === country}
          onClick={() => go(catalogueAddress({ ...at, country }), 'replace')}
        >
          {NAMES[country]}
        </button>
      ))}
    </fieldset>
  );
}
