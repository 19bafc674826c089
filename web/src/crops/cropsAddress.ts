import type { CropGridInput, QuestionInput } from '../api/contract.ts';
import { decodeAddress, encodeAddress } from '../question/address.ts';
import { dayOf, isoOf } from '../question/calendar.ts';
import { addToSearch, splitSearch } from '../question/splitSearch.ts';
import type { Codec } from '../shell/useHeldAddress.ts';

/** Which years the odds are of. */
export const YEARS = ['dry', 'all', 'wet'] as const;
export type Years = (typeof YEARS)[number];

/** The planting dates that are looked at, as written; the server judges them. */
export interface Span {
  readonly plantFrom: string;
  readonly plantTo: string;
  readonly stepDays: number;
}

/** What the place asks: the field’s question, whose crop and date are the ringed cell, and the dates of the grid. */
export interface CropsAsked {
  readonly question: QuestionInput;
  readonly span: Span;
  readonly years: Years;
  /** Crops to look at; null for all of the catalogue. */
  readonly crops: readonly string[] | null;
}

const EXTRAS = ['plantFrom', 'plantTo', 'stepDays', 'years', 'crops'];
const WEEK = 7;
const WEEKS_BEFORE = 5;
const WEEKS_AFTER = 8;

/** Fourteen weeks around the planting date, which is one of their dates; none before the day after spraying. */
export function spanAround({ plantOn, appliedOn }: QuestionInput): Span {
  const day = dayOf(plantOn);
  const room = Math.floor((day - dayOf(appliedOn) - 1) / WEEK);
  const before = Number.isNaN(room) ? WEEKS_BEFORE : Math.max(0, Math.min(WEEKS_BEFORE, room));
  return Number.isNaN(day)
    ? { plantFrom: plantOn, plantTo: plantOn, stepDays: WEEK }
    : { plantFrom: isoOf(day - before * WEEK), plantTo: isoOf(day + WEEKS_AFTER * WEEK), stepDays: WEEK };
}

export const askedFrom = (question: QuestionInput): CropsAsked => ({
  question,
  span: spanAround(question),
  years: 'all',
  crops: null,
});

export const CROPS: Codec<CropsAsked> = {
  path: '/crops',
  encode({ question, span, years, crops }, units) {
    return addToSearch(encodeAddress(question, units), {
      plantFrom: span.plantFrom,
      plantTo: span.plantTo,
      stepDays: `${span.stepDays}`,
      years: years === 'all' ? undefined : years,
      crops: crops === null ? undefined : crops.join('~'),
    });
  },
  decode(search) {
    const { extras, search: rest } = splitSearch(search, EXTRAS);
    const { question, units, problem } = decodeAddress(rest);
    if (question === null) return { value: null, units, problem };
    const usual = askedFrom(question);
    const step = Number(extras.stepDays);
    const crops = extras.crops?.split('~').filter(Boolean) ?? [];
    return {
      value: {
        question,
        span: {
          plantFrom: extras.plantFrom ?? usual.span.plantFrom,
          plantTo: extras.plantTo ?? usual.span.plantTo,
          stepDays: step > 0 ? step : usual.span.stepDays,
        },
        years: YEARS.find((name) => name === extras.years) ?? 'all',
        crops: crops.length === 0 ? null : crops,
      },
      units,
      problem,
    };
  },
};

/** What is posted: the treatment, and the dates and crops of the grid. */
export function cropGridOf({ question, span, crops }: CropsAsked): CropGridInput {
  const { crop: _c, plantOn: _p, interval: _i, evidence: _e, zones: _z, ...rest } = question;
  return { ...rest, ...span, ...(crops && { crops: [...crops] }) };
}

/** The same question about another crop and date; an interval given for the former crop falls away. */
export function withCrop(question: QuestionInput, crop: string, plantOn: string): QuestionInput {
  if (crop === question.crop) return { ...question, plantOn };
  const { interval: _i, evidence: _e, ...rest } = question;
  return { ...rest, crop, plantOn };
}
