import { useEffect, useRef } from 'preact/hooks';
import type { Units } from '../units/units.ts';
import { takeUnits } from '../units/useUnits.ts';
import type { Location, PlaceName } from './places.ts';

/** Places whose question keeps the units in its address itself. */
const ASKING: ReadonlySet<PlaceName> = new Set(['field', 'compare', 'crops']);

/** Keeps the units in the address of every place that does not do so itself. */
export function useUnitsInAddress(units: Units, { place, path, search }: Location): void {
  const arrived = useRef(false);
  useEffect(() => {
    const query = new URLSearchParams(location.search);
    const asked = query.get('u');
    const first = !arrived.current;
    arrived.current = true;
    if (ASKING.has(place)) return;
    if (first && (asked === 'us' || asked === 'metric')) {
      takeUnits(asked);
      return;
    }
    const wanted = units === 'us' ? null : units;
    if (asked === wanted) return;
    if (wanted === null) query.delete('u');
    else query.set('u', wanted);
    const text = query.toString();
    history.replaceState(null, '', `${location.pathname}${text && `?${text}`}`);
  }, [units, place, path, search]);
}
