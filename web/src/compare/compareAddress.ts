import type { ComparisonInput, QuestionInput } from '../api/contract.ts';
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

/** The question without what belongs to one residual only. */
export function comparisonOf(question: QuestionInput): ComparisonInput {
  const { residual: _r, interval: _i, halfLifeDays: _h, evidence: _e, labelEntry: _l, ...rest } = question;
  return rest;
}

/** The same question about another residual: what belonged to the former one falls away. */
export function withResidual(question: QuestionInput, residual: string): QuestionInput {
  return residual === question.residual ? question : { ...comparisonOf(question), residual };
}
