import { useEffect, useState } from 'preact/hooks';

/** The places of the page, by the first part of the address. */
export type PlaceName =
  | 'field'
  | 'compare'
  | 'crops'
  | 'sheet'
  | 'bioassay'
  | 'fields'
  | 'region'
  | 'labels'
  | 'weather'
  | 'catalogue'
  | 'nowhere';

/** Where the browser is. */
export interface Location {
  readonly place: PlaceName;
  readonly path: string;
  readonly search: string;
}

const FIELD_KEY = 'drywake-field';
/** Fired after the page itself has changed the address. */
const MOVED = 'drywake-moved';
/** Fired when another question is kept. */
const KEPT = 'drywake-kept';

let lastField: string | null = null;

/** Places with pages of their own below them. */
const DEEP = ['fields', 'labels', 'catalogue'] as const;

export function placeOf(path: string): PlaceName {
  if (path === '/') return 'field';
  if (path === '/compare') return 'compare';
  if (path === '/crops') return 'crops';
  if (path === '/region') return 'region';
  if (path === '/sheet') return 'sheet';
  if (path === '/bioassay') return 'bioassay';
  if (path === '/weather') return 'weather';
  return DEEP.find((name) => path === `/${name}` || path.startsWith(`/${name}/`)) ?? 'nowhere';
}

const locationNow = (): Location => ({
  place: placeOf(location.pathname),
  path: location.pathname,
  search: location.search,
});

/** Goes to another address of the page without loading it anew. */
export function go(address: string, entry: 'push' | 'replace' = 'push'): void {
  if (location.pathname === '/') keepField(location.search);
  if (entry === 'push') history.pushState(null, '', address);
  else history.replaceState(null, '', address);
  window.dispatchEvent(new Event(MOVED));
}

/** Calls back whenever the address has changed: a link, a step back or forth. */
export function onMove(moved: () => void): () => void {
  window.addEventListener('popstate', moved);
  window.addEventListener(MOVED, moved);
  return () => {
    window.removeEventListener('popstate', moved);
    window.removeEventListener(MOVED, moved);
  };
}

/** Where the browser is, kept up to date. */
export function useLocation(): Location {
  const [now, setNow] = useState(locationNow);
  useEffect(() => onMove(() => setNow(locationNow())), []);
  return now;
}

/** Keeps the query of the field’s question while other places are looked at. */
export function keepField(search: string): void {
  if (search === lastField) return;
  lastField = search;
  window.dispatchEvent(new Event(KEPT));
  try {
    sessionStorage.setItem(FIELD_KEY, search);
  } catch {
    // Storage is forbidden: it is remembered until the page is loaded anew.
  }
}

/** Query of the question that was last asked; empty where none was. */
export function lastFieldSearch(): string {
  if (lastField !== null) return lastField;
  try {
    return sessionStorage.getItem(FIELD_KEY) ?? '';
  } catch {
    return '';
  }
}

/** {@link lastFieldSearch}, kept up to date. */
export function useLastField(): string {
  const [search, setSearch] = useState(lastFieldSearch);
  useEffect(() => {
    const kept = () => setSearch(lastFieldSearch());
    kept();
    window.addEventListener(KEPT, kept);
    return () => window.removeEventListener(KEPT, kept);
  }, []);
  return search;
}
