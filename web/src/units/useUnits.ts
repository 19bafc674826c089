import { useEffect, useState } from 'preact/hooks';
import type { Units } from './units.ts';

const UNITS_KEY = 'drywake-units';

let current: Units | null = null;
const listeners = new Set<(units: Units) => void>();

/** The units that all places speak. */
export function presentUnits(): Units {
  current ??= keptUnits();
  return current;
}

/** Switches all places at once, and keeps the choice for the next visit. */
export function switchUnits(units: Units): void {
  keepUnits(units);
  takeUnits(units);
}

/** Takes the units that a link asks for, without keeping them. */
export function takeUnits(units: Units): void {
  current = units;
  for (const listen of listeners) listen(units);
}

/** The units, kept up to date. */
export function useUnits(): Units {
  const [units, setUnits] = useState(presentUnits);
  useEffect(() => {
    setUnits(presentUnits());
    listeners.add(setUnits);
    return () => void listeners.delete(setUnits);
  }, []);
  return units;
}

function keptUnits(): Units {
  try {
    return localStorage.getItem(UNITS_KEY) === 'metric' ? 'metric' : 'us';
  } catch {
    return 'us';
  }
}

function keepUnits(units: Units): void {
  try {
    localStorage.setItem(UNITS_KEY, units);
  } catch {
    // Storage is forbidden: the address still holds the units.
  }
}
