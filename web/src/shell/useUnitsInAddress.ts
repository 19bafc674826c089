import { useEffect, useRef } from 'preact/hooks';
import type { Units } from '../units/units.ts';
import { takeUnits } from '../units/useUnits.ts';
import type { Location } from './places.ts';

/** Keeps the units in the address of every place but the field, whose question does so itself. */
export function useUnitsInAddress(units: Units, { place, path, search }: Location): void {
  const arrived = useRef(false);
  useEffect(() => {
    const query = new URLSearchParams(location.search);
    const asked = query.get('u');
    const first = !arrived.current;
    arrived.current = true;
    if (place === 'field') return;
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
