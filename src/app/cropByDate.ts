import type { PairSeason } from '../analysis/pairSeason.ts';
import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { findActive } from '../catalogue/findActive.ts';
import { findCrop } from '../catalogue/findCrop.ts';
import { InvalidInputError } from '../errors.ts';
import {
  type CropGrid,
  type CropGridInput,
  type CropRow,
  cropGridQuestionSchema,
  MOST_DATES,
} from '../schema/comparison.ts';
import type { AnswerDeps } from './answerField.ts';
import { sharedCautions } from './comparisonCautions.ts';
import { modelOf } from './modelOf.ts';
import {
  conditionedAll,
  dateOfOffset,
  isUnjudged,
  type JudgedPair,
  judgedOrTold,
  judgePair,
  type KnownSeasons,
  NOTHING_BESIDE,
  resolveAll,
  sharedSeason,
} from './pairAnswers.ts';
import { readQuestion } from './readQuestion.ts';

/**
 * Which crops can go in when, after one treatment.
 *
 * @throws {InvalidInputError} RESIDUAL_UNKNOWN, CROP_UNKNOWN, DATES_DISORDERED, TOO_MANY_DATES and what
 *   {@link answerField} throws about dates, soil and weather
 * @example (await cropByDate({ station: 'demo-invented', residual: 'flumioxazin', appliedOn: '2026-08-14', plantFrom: '2027-05-01', plantTo: '2027-05-15', crops: ['lentil'] }, deps)).crops.length // 1
 */
export async function cropByDate(input: CropGridInput, deps: AnswerDeps): Promise<CropGrid> {
  const question = readQuestion(cropGridQuestionSchema, input);
  const { crops, plantFrom, plantTo, stepDays, ...rest } = question;
  const { catalogue } = deps;
  const model = modelOf(deps.version);
  const residual = findActive(catalogue, question.residual).isoName;
  const days = plantDays(parseIsoDate(plantFrom), parseIsoDate(plantTo), stepDays);
  const names = (crops ?? catalogue.crops.map(({ name }) => name)).map(
    (name) => findCrop(catalogue, name).name,
  );
  const { resolved: asked, unjudged } = resolveAll(
    [...new Set(names)].map((crop) => ({
      name: crop,
      question: { ...rest, ...NOTHING_BESIDE, residual, crop, plantOn: plantFrom },
    })),
    catalogue,
  );
  const weather = await deps.climates.of({
    ...rest,
    ...NOTHING_BESIDE,
    residual,
    crop: names[0],
    plantOn: plantFrom,
  });
  const dates = days.map(isoDateOf);
  const cautions = sharedCautions(weather, question.labelEntry);
  if (asked.length === 0) return { question, residual, dates, crops: [], unjudged, cautions, model };
  const resolved = conditionedAll(asked, weather, catalogue);
  const set = sharedSeason(resolved, weather, days[days.length - 1]);
  const known: KnownSeasons = new Map();
  const told: ToldSeasons = new Map();
  const rows = resolved.map((one) =>
    judgedOrTold(one.crop?.name ?? '', () => cropRow(judgePair(one, set, weather, known), days, told)),
  );
  return {
    question,
    residual,
    dates,
    crops: rows.filter((row): row is CropRow => !isUnjudged(row)).sort(byDates),
    unjudged: [...unjudged, ...rows.filter(isUnjudged)],
    cautions,
    model,
  };
}

function plantDays(first: number, last: number, stepDays: number): number[] {
  if (last < first) {
    throw new InvalidInputError('DATES_DISORDERED', 'The last planting date lies before the first.', {
      hint: 'Give the earlier date first.',
      details: { field: 'plantTo' },
    });
  }
  const count = Math.floor((last - first) / stepDays) + 1;
  if (count > MOST_DATES) {
    throw new InvalidInputError(
      'TOO_MANY_DATES',
      `That makes ${count} planting dates; at most ${MOST_DATES} are answered at once.`,
      { hint: 'Take a longer step or a shorter span.', details: { field: 'stepDays', count } },
    );
  }
  return Array.from({ length: count }, (_, index) => first + index * stepDays);
}

type ToldSeason = Pick<CropRow, 'clearDate' | 'odds' | 'dry' | 'wet'>;
/** What crops that share a season share. */
type ToldSeasons = Map<PairSeason, ToldSeason>;

function cropRow(
  { resolved, season, labelDate }: JudgedPair,
  days: readonly number[],
  told: ToldSeasons,
): CropRow {
  const known = {
    crop: resolved.crop?.name ?? resolved.question.crop,
    interval: resolved.interval,
    labelDate,
    ...(resolved.labelForbids ? { labelForbids: true } : {}),
  };
  if (season === null) {
    return { ...known, carryoverModelled: false, clearDate: labelDate, odds: null, dry: null, wet: null };
  }
  const found = told.get(season) ?? oddsOf(season, days, resolved);
  told.set(season, found);
  return { ...known, carryoverModelled: true, ...found };
}

function oddsOf(season: PairSeason, days: readonly number[], resolved: JudgedPair['resolved']): ToldSeason {
  const answers = days.map((day) => season.at(day));
  return {
    clearDate: dateOfOffset(resolved, answers[0].clearOffset()),
    odds: answers.map(({ oddsAtPlanting }) => oddsAtPlanting),
    dry: answers.map((answer) => answer.thirdOdds('dry')),
    wet: answers.map((answer) => answer.thirdOdds('wet')),
  };
}

const NEVER = '9999-12-31';
const byDates = (a: CropRow, b: CropRow): number => {
  const key = ({ labelDate, clearDate, crop }: CropRow) => [clearDate ?? NEVER, labelDate, crop].join(' ');
  return key(a) < key(b) ? -1 : 1;
};
