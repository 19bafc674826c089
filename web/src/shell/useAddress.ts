import type { QuestionInput } from '../api/contract.ts';
import { decodeAddress, encodeAddress } from '../question/address.ts';
import type { Units } from '../units/units.ts';
import { type Codec, type Entry, useHeldAddress } from './useHeldAddress.ts';

export type { Entry } from './useHeldAddress.ts';

/** The question and the units, held in the address bar. */
export interface AddressState {
  readonly question: QuestionInput | null;
  readonly units: Units;
  readonly problem: string | null;
  /** Counts the times that the question was taken from the address: a load, a step back or forth. */
  readonly visit: number;
  readonly setQuestion: (question: QuestionInput, entry: Entry) => void;
}

const FIELD: Codec<QuestionInput> = {
  path: '/',
  encode: encodeAddress,
  decode(search) {
    const { question, units, problem } = decodeAddress(search);
    return { value: question, units, problem };
  },
};

/** Reads question and units from the address and writes every change back to it. */
export function useAddress(): AddressState {
  const { value, set, ...rest } = useHeldAddress(FIELD);
  return { ...rest, question: value, setQuestion: set };
}
