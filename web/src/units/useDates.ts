import { useEffect, useState } from 'preact/hooks';
import { type DateStyle, type DateWords, shownDates, styleWith } from './dates.ts';
import type { Units } from './units.ts';
import { presentUnits, useUnits } from './useUnits.ts';

const DATES_KEY = 'drywake-dates';

/** What the reader has chosen; null where dates go with the units, undefined before it was looked up. */
let chosen: DateStyle | null | undefined;
const listeners = new Set<(style: DateStyle | null) => void>();

/** Switches the dates of all places at once, and keeps the choice for the next visit. */
export function switchDates(style: DateStyle): void {
  chosen = style;
  try {
    localStorage.setItem(DATES_KEY, style);
  } catch {
    // Storage is forbidden: the choice holds until the page is loaded anew.
  }
  for (const listen of listeners) listen(style);
}

/** How dates are written, kept up to date. */
export function useDates(): DateWords {
  const units = useUnits();
  const [style, setStyle] = useState(chosenStyle);
  useEffect(() => {
    setStyle(chosenStyle());
    listeners.add(setStyle);
    return () => void listeners.delete(setStyle);
  }, []);
  return shownDates(style ?? styleWith(units));
}

/** The query by which the server words its sentences as the page does; empty where it does so by itself. */
export function useWording(): string {
  const { style } = useDates();
  return wordingQuery(useUnits(), style);
}

/** The same at this moment, for what is asked once. */
export const presentWording = (): string =>
  wordingQuery(presentUnits(), chosenStyle() ?? styleWith(presentUnits()));

function wordingQuery(units: Units, style: DateStyle): string {
  const query = new URLSearchParams();
  if (units !== 'us') query.set('units', units);
  if (style !== styleWith(units)) query.set('dates', style);
  return query.toString();
}

/** A path with a query added to what it asks already. */
export const asking = (path: string, query: string): string =>
  query === '' ? path : `${path}${path.includes('?') ? '&' : '?'}${query}`;

function chosenStyle(): DateStyle | null {
  chosen ??= keptStyle();
  return chosen;
}

function keptStyle(): DateStyle | null {
  try {
    const kept = localStorage.getItem(DATES_KEY);
    return kept === 'us' || kept === 'iso' ? kept : null;
  } catch {
    return null;
  }
}
