import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Units } from '../units/units.ts';
import { presentUnits, takeUnits, useUnits } from '../units/useUnits.ts';
import { onMove } from './places.ts';

/** What a change does to the history; while something is dragged the address follows now and then only. */
export type Entry = 'push' | 'replace' | 'drag';

/** Browsers refuse more than a few address changes a second. [ms] */
const DRAG_MS = 400;

/** What the query of an address says. */
export interface Read<T> {
  /** What it asks; null where it asks nothing. */
  readonly value: T | null;
  readonly units: Units | null;
  /** What it holds that cannot be used. */
  readonly problem: string | null;
}

/** How a place writes what it asks into the query of its address, and reads it back. */
export interface Codec<T> {
  readonly path: string;
  readonly encode: (value: T, units: Units) => string;
  readonly decode: (search: string) => Read<T>;
}

/** Something that the address bar holds. */
export interface Held<T> {
  readonly value: T | null;
  readonly units: Units;
  readonly problem: string | null;
  /** Counts the times that it was taken from the address: a load, a step back or forth. */
  readonly visit: number;
  readonly set: (value: T, entry: Entry) => void;
}

/**
 * Keeps what a place asks in the address: read on a load and on every step of the history, written on every change.
 * @param codec one object for the life of the place
 */
export function useHeldAddress<T>(codec: Codec<T>): Held<T> {
  const [state, setState] = useState(() => ({ ...readAddress(codec), visit: 0 }));
  const units = useUnits();
  const latest = useRef(state);
  const timer = useRef(0);
  const take = useCallback((part: Partial<typeof state>) => {
    latest.current = { ...latest.current, ...part };
    setState(latest.current);
  }, []);

  useEffect(() => {
    const leaving = onMove(() => {
      if (location.pathname === codec.path) take({ ...readAddress(codec), visit: latest.current.visit + 1 });
    });
    return () => {
      leaving();
      clearTimeout(timer.current);
    };
  }, [codec, take]);

  const set = useCallback(
    (value: T, entry: Entry) => {
      take({ value });
      if (entry === 'drag') {
        timer.current ||= window.setTimeout(() => {
          timer.current = 0;
          write(codec, latest.current.value, 'replace');
        }, DRAG_MS);
        return;
      }
      clearTimeout(timer.current);
      timer.current = 0;
      write(codec, value, entry);
    },
    [codec, take],
  );

  useEffect(() => write(codec, latest.current.value, 'replace'), [codec, units]);
  return { ...state, units, set };
}

function write<T>(codec: Codec<T>, value: T | null, entry: 'push' | 'replace') {
  if (value === null || location.pathname !== codec.path) return;
  const search = codec.encode(value, presentUnits());
  if (search === location.search) return;
  if (entry === 'push') history.pushState(null, '', search);
  else history.replaceState(null, '', search);
}

/** What the address asks; the units of a link are taken over with it. */
function readAddress<T>(codec: Codec<T>): Omit<Read<T>, 'units'> {
  const { units, value, problem } = codec.decode(location.search);
  if (units !== null) takeUnits(units);
  else if (value !== null) takeUnits('us');
  return { value, problem };
}
