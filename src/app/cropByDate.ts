import type { PairSeason } from '../analysis/pairSeason.ts';
import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { findActive } from '../catalogue/findActive.ts';
import { findCrop } from '../catalogue/findCrop.ts';
import { InvalidInputError } from '../errors.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import {
  type CropGrid,
  type CropGridInput,
  type CropRow,
  cropGridQuestionSchema,
  MOST_DATES,
} from '../schema/comparison.ts';
import type { LabelEntry } from '../schema/labelEntry.ts';
import type { Question } from '../schema/question.ts';
import type { AnswerDeps } from './answerField.ts';
import { sharedCautions } from './comparisonCautions.ts';
import { modelOf } from './modelOf.ts';
import {
  dateOfOffset,
  isUnjudged,
  type JudgedPair,
  judgedOrTold,
  judgePair,
  NOTHING_FOUND,
  resolveAll,
} from './pairAnswers.ts';
import { type OtherQuestion, otherQuestions } from './preparedTreatments.ts';
import { readQuestion } from './readQuestion.ts';
import { cropName } from './resolveEntered.ts';
import { sharedSeasons } from './sharedSeasons.ts';
import { storedLabel } from './treatment.ts';

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
  const stored = await storedLabel(question, deps.labels);
  const entry = stored?.entry ?? null;
  const residual = question.residual ?? entry?.actives[0].name ?? '';
  const days = plantDays(parseIsoDate(plantFrom), parseIsoDate(plantTo), stepDays);
  const names = cropNames(crops, entry, catalogue);
  const asked: Question = { ...rest, ...NOTHING_FOUND, residual, crop: names[0], plantOn: plantFrom };
  if (entry === null) findActive(catalogue, residual);
  const weather = await deps.climates.of(asked);
  const others = (await otherQuestions(asked, deps.labels)).map(withoutInterval);
  const { resolved, unjudged } = resolveAll(
    names.map((crop) => ({ name: crop, question: { ...asked, crop }, entry })),
    others,
    weather,
    catalogue,
  );
  const known = {
    question,
    residual: entry?.actives.map(({ name }) => name).join(' + ') ?? findActive(catalogue, residual).isoName,
    labelEntry: entry && { id: entry.id, name: entry.name },
    dates: days.map(isoDateOf),
    cautions: sharedCautions(weather, others.length),
    model: modelOf(deps.version),
  };
  if (resolved.length === 0) return { ...known, crops: [], unjudged };
  const questions = resolved.map((one) => one.resolved);
  const { set, known: seasons } = (deps.seasons ?? sharedSeasons()).of(
    questions,
    weather.climate,
    days[days.length - 1],
  );
  const told: ToldSeasons = new Map();
  const rows = resolved.map(({ pair, resolved: one }) =>
    judgedOrTold(pair.name, () => cropRow(judgePair(one, set, weather, seasons), days, told)),
  );
  return {
    ...known,
    crops: rows.filter((row): row is CropRow => !isUnjudged(row)).sort(byDates),
    unjudged: [...unjudged, ...rows.filter(isUnjudged)],
  };
}

/** The crops asked about; all of the catalogue, and those that only the label entry names, where none is. */
function cropNames(
  asked: readonly string[] | undefined,
  entry: LabelEntry | null,
  catalogue: Catalogue,
): string[] {
  const onLabel = (entry?.intervals ?? []).map(({ crop }) => cropName(crop, catalogue));
  const named = (asked ?? []).map((name) => {
    const own = cropName(name, catalogue);
    return onLabel.includes(own) ? own : findCrop(catalogue, name).name;
  });
  const all = asked === undefined ? [...catalogue.crops.map(({ name }) => name), ...onLabel] : named;
  return [...new Set(all)];
}

/** An interval given for another treatment belongs to one crop, and here many are asked about. */
const withoutInterval = ({ question, stored }: OtherQuestion): OtherQuestion => ({
  question: { ...question, interval: undefined },
  stored,
});

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

type ToldSeason = Pick<CropRow, 'clearDate' | 'odds' | 'oddsRange' | 'dry' | 'wet'>;
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
    const none = { odds: null, oddsRange: null, dry: null, wet: null };
    return { ...known, carryoverModelled: false, clearDate: labelDate, ...none };
  }
  const found = told.get(season) ?? oddsOf(season, days);
  told.set(season, found);
  return { ...known, carryoverModelled: true, ...found };
}

function oddsOf(season: PairSeason, days: readonly number[]): ToldSeason {
  const answers = days.map((day) => season.at(day));
  const ranges = answers.map((answer) => answer.range());
  return {
    clearDate: dateOfOffset(season, answers[0].clearOffset()),
    odds: answers.map(({ oddsAtPlanting }) => oddsAtPlanting),
    oddsRange: {
      low: ranges.map(({ low }) => low),
      high: ranges.map(({ high }) => high),
      years: answers.map(({ years }) => years),
    },
    dry: answers.map((answer) => answer.thirdOdds('dry')),
    wet: answers.map((answer) => answer.thirdOdds('wet')),
  };
}

const NEVER = '9999-12-31';
const byDates = (a: CropRow, b: CropRow): number => {
  const key = ({ labelDate, clearDate, crop }: CropRow) => [clearDate ?? NEVER, labelDate, crop].join(' ');
  return key(a) < key(b) ? -1 : 1;
};
