import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { QuestionInput } from '../api/contract.ts';
import { type Addressed, decodeAddress, encodeAddress } from '../question/address.ts';
import type { Units } from '../units/units.ts';
import { presentUnits, takeUnits, useUnits } from '../units/useUnits.ts';
import { onMove } from './places.ts';

/** What a change does to the history; while something is dragged the address follows now and then only. */
export type Entry = 'push' | 'replace' | 'drag';

/** Browsers refuse more than a few address changes a second. [ms] */
const DRAG_MS = 400;

/** The question and the units, held in the address bar. */
export interface AddressState {
  readonly question: QuestionInput | null;
  readonly units: Units;
  readonly problem: string | null;
  /** Counts the times that the question was taken from the address: a load, a step back or forth. */
  readonly visit: number;
  readonly setQuestion: (question: QuestionInput, entry: Entry) => void;
}

/** Reads question and units from the address and writes every change back to it. */
export function useAddress(): AddressState {
  const [state, setState] = useState(() => ({ ...readAddress(), visit: 0 }));
  const units = useUnits();
  const latest = useRef(state);
  const timer = useRef(0);
  const set = useCallback((part: Partial<typeof state>) => {
    latest.current = { ...latest.current, ...part };
    setState(latest.current);
  }, []);

  useEffect(() => {
    const leaving = onMove(() => {
      if (location.pathname === '/') set({ ...readAddress(), visit: latest.current.visit + 1 });
    });
    return () => {
      leaving();
      clearTimeout(timer.current);
    };
  }, [set]);

  const setQuestion = useCallback(
    (question: QuestionInput, entry: Entry) => {
      set({ question });
      if (entry === 'drag') {
        timer.current ||= window.setTimeout(() => {
          timer.current = 0;
          write(latest.current.question, 'replace');
        }, DRAG_MS);
        return;
      }
      clearTimeout(timer.current);
      timer.current = 0;
      write(latest.current.question, entry);
    },
    [set],
  );

  useEffect(() => write(latest.current.question, 'replace'), [units]);
  return { ...state, units, setQuestion };
}

function write(question: QuestionInput | null, entry: 'push' | 'replace') {
  if (question === null || location.pathname !== '/') return;
  const address = encodeAddress(question, presentUnits());
  if (address === location.search) return;
  if (entry === 'push') history.pushState(null, '', address);
  else history.replaceState(null, '', address);
}

/** What the address asks; the units of a link are taken over with it. */
function readAddress(): Omit<Addressed, 'units'> {
  const { units, question, problem } = decodeAddress(location.search);
  if (units !== null) takeUnits(units);
  else if (question !== null) takeUnits('us');
  return { question, problem };
}
