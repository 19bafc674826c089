import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Choices, Problem, QuestionInput, StoredLabel } from '../api/contract.ts';
import type { Units } from '../units/units.ts';

/** What every blank needs, whatever its form is about. */
export interface BlankState {
  readonly units: Units;
  /** The server’s refusal of what the form holds. */
  readonly refusal: Problem | null;
  /** Texts that could not be read, by field. */
  readonly typed: Readonly<Record<string, string>>;
  readonly keepTyped: (field: string, text: string | null) => void;
  /** Forgets the texts of all fields that begin so: entries of a list have moved up. */
  readonly forgetTyped: (prefix: string) => void;
  /** What can be chosen from; empty lists until it is known. */
  readonly choices: Choices;
  /** The user’s own label entries. */
  readonly labels: readonly StoredLabel[];
}

/** Until the server has said what can be chosen. */
export const NO_CHOICES: Choices = { residuals: [], crops: [], soilClasses: [], stations: [] };

/** What every blank of the question shares. */
export interface FormState extends BlankState {
  readonly question: QuestionInput;
  /** Changes the question and asks anew; a field set to undefined falls back to its standard value. */
  readonly change: (part: Partial<QuestionInput>) => void;
}

export const FormContext = createContext<BlankState | FormState | null>(null);

const isAbout = (form: BlankState | FormState): form is FormState => 'question' in form;

/** The form around a blank. */
export function useBlanks(): BlankState | FormState {
  const form = useContext(FormContext);
  if (form === null) throw new Error('A blank stands outside its form.');
  return form;
}

/** The form around a blank of the question. */
export function useForm(): FormState {
  const form = useBlanks();
  if (!isAbout(form)) throw new Error('A blank of the question stands in another form.');
  return form;
}

/** Fields of refusals that name none themselves. */
const FIELD_OF_CODE: Readonly<Record<string, string>> = {
  INTERVAL_UNREADABLE: 'interval',
  INTERVAL_MISSING: 'interval',
  RESIDUAL_UNKNOWN: 'residual',
  CROP_UNKNOWN: 'crop',
  STATION_UNKNOWN: 'station',
};

/** The field that a refusal is about; null where it is about the whole question. */
export function refusedField(refusal: Problem | null): string | null {
  if (refusal === null) return null;
  const { field } = refusal.details;
  return typeof field === 'string' && field !== '' ? field : (FIELD_OF_CODE[refusal.code] ?? null);
}

/** The server’s words about a field, if its refusal is about that one. */
export const refusalOf = (refusal: Problem | null, field: string): string | null =>
  refusal !== null && refusedField(refusal) === field ? `${refusal.message} ${refusal.hint}`.trim() : null;
