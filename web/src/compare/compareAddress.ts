import type { ComparisonInput, QuestionInput, ResidualRow } from '../api/contract.ts';
import { decodeAddress, encodeAddress } from '../question/address.ts';
import { addToSearch, splitSearch } from '../question/splitSearch.ts';
import type { Codec } from '../shell/useHeldAddress.ts';
import { SORT_KEYS, type Sort, type SortKey } from './sortRows.ts';

/** What the place asks: the field’s question, and how the answer is looked at. */
export interface CompareAsked {
  /** Its residual is only brought out, not asked about. */
  readonly question: QuestionInput;
  /** Residuals whose season is drawn; null for those that suggest themselves. */
  readonly picks: readonly string[] | null;
  /** Whether those that the label rules out are drawn too. */
  readonly all: boolean;
  /** Order of the table; null for the best first. */
  readonly sort: Sort | null;
}

const EXTRAS = ['over', 'all', 'sort'];
/** Season curves that can be told apart on one ruler. */
export const MOST_PICKS = 3;

export const COMPARE: Codec<CompareAsked> = {
  path: '/compare',
  encode({ question, picks, all, sort }, units) {
    return addToSearch(encodeAddress(question, units), {
      over: picks === null ? undefined : picks.join('~'),
      all: all ? '1' : undefined,
      sort: sort === null ? undefined : `${sort.descending ? '-' : ''}${sort.key}`,
    });
  },
  decode(search) {
    const { extras, search: rest } = splitSearch(search, EXTRAS);
    const { question, units, problem } = decodeAddress(rest);
    const picks = extras.over?.split('~').filter(Boolean).slice(0, MOST_PICKS) ?? null;
    return {
      value:
        question === null ? null : { question, picks, all: extras.all === '1', sort: readSort(extras.sort) },
      units,
      problem,
    };
  },
};

function readSort(text: string | undefined): Sort | null {
  if (text === undefined) return null;
  const key = text.replace(/^-/, '');
  return SORT_KEYS.includes(key as SortKey)
    ? { key: key as SortKey, descending: text.startsWith('-') }
    : null;
}

/** The question without what belongs to one residual only; the field’s other treatments stay. */
export function comparisonOf(question: QuestionInput): ComparisonInput {
  const {
    residual: _r,
    interval: _i,
    halfLifeDays: _h,
    rateGramsPerHa: _g,
    evidence: _e,
    labelEntry: _l,
    zones: _z,
    ...rest
  } = question;
  return rest;
}

/** The question about one row: nothing of the former residual is left. */
const ofRow = (question: QuestionInput, { labelEntry, active }: NamedRow): QuestionInput =>
  ({
    ...comparisonOf(question),
    // A label entry names its own active.
    ...(labelEntry === null ? { residual: active } : { labelEntry: labelEntry.id }),
  }) as QuestionInput;

/** Whether a row is what the question itself asks about. */
export const isAsked = ({ labelEntry, active }: NamedRow, question: QuestionInput): boolean =>
  question.labelEntry === undefined
    ? labelEntry === null && active === question.residual
    : labelEntry?.id === question.labelEntry;

/** The question about one row with all that stays the same for it; about its own row the question itself. */
export function withRow(question: QuestionInput, row: NamedRow): QuestionInput {
  if (isAsked(row, question)) return question;
  const { zones } = question;
  return { ...ofRow(question, row), ...(zones && { zones }) };
}

/** The questions about some rows, for their seasons. */
export const ofRows = (question: QuestionInput, rows: readonly NamedRow[]): QuestionInput[] =>
  rows.map((row) => ofRow(question, row));

/** A row under a name that no other has: the active, or an own product with its actives. */
export type NamedRow = ResidualRow & { readonly active: string };

/** Gives each row the name under which tables, charts and links know it. */
export function namedRows(rows: readonly ResidualRow[]): NamedRow[] {
  const names = rows.map((row) => productName(row.residual, row.labelEntry));
  return rows.map((row, index) => {
    const twice = names.indexOf(names[index]) !== names.lastIndexOf(names[index]);
    const residual =
      twice && row.labelEntry !== null ? `${names[index]}, ${row.labelEntry.id}` : names[index];
    return { ...row, residual, active: row.residual };
  });
}

/** What a treatment is called: its active, or the user’s own product with its actives. */
export const productName = (residual: string, own: { readonly name: string } | null): string =>
  own === null ? residual : `${own.name} (${residual})`;
