import { decodedPart } from '../shell/decodedPart.ts';

/** Country whose label rows count. */
export type Country = 'US' | 'CA';

/** What the address of the catalogue says. */
export interface CatalogueAddress {
  readonly active: string | null;
  readonly crop: string | null;
  readonly country: Country;
}

const START = '/catalogue/';

/** Reads an address of the catalogue. */
export function readCatalogueAddress(path: string, search: string): CatalogueAddress {
  const query = new URLSearchParams(search);
  return {
    active:
      path.startsWith(START) && path.length > START.length ? decodedPart(path.slice(START.length)) : null,
    crop: query.get('crop') || null,
    country: query.get('country') === 'CA' ? 'CA' : 'US',
  };
}

/** The address of the catalogue that says that. */
export function catalogueAddress({
  active = null,
  crop = null,
  country = 'US',
}: Partial<CatalogueAddress>): string {
  const query = new URLSearchParams();
  if (crop !== null) query.set('crop', crop);
  if (country !== 'US') query.set('country', country);
  const text = query.toString();
  const path =
    active === null ? '/catalogue' : `${START}${encodeURIComponent(active).replaceAll('%2C', ',')}`;
  return `${path}${text && `?${text}`}`;
}
