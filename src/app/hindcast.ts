import { type HindcastYear, hindcastYear, hindcastYears, SOILS_PER_YEAR } from '../analysis/hindcast.ts';
import { type HindcastScores, hindcastScores } from '../analysis/hindcastScores.ts';
import { LEAST_YEARS } from '../analysis/historicalYears.ts';
import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { InvalidInputError, MissingDataError } from '../errors.ts';
import {
  type Hindcast,
  type HindcastInput,
  type HindcastQuestion,
  hindcastQuestionSchema,
} from '../schema/hindcast.ts';
import type { OutcomeTally } from '../schema/outcomeTally.ts';
import type { AnswerDeps } from './answerField.ts';
import { carryingApplications } from './fieldTreatments.ts';
import { modelOf } from './modelOf.ts';
import { packWeather } from './packedWeather.ts';
import { preparedTreatments } from './preparedTreatments.ts';
import { readQuestion } from './readQuestion.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';
import type { StationWeather } from './stationWeather.ts';
import { throwIfStopped } from './stopped.ts';
import { speciesOf, storedLabel, withResidual } from './treatment.ts';
import type { WeatherReader } from './weatherReader.ts';
import { sayBareOdds } from './words.ts';
import type { Workshop } from './workshop.ts';

const MEANING =
  'Each past year was taken out and the odds worked out from all other years, as they would have been given then; ' +
  'its own weather then decided in each of twenty equally likely soils. This tests the weather part of the odds only: ' +
  'soils, half-lives and the label’s margin are the model’s own on both sides. Outcomes seen in fields test those.';

/** What a hindcast needs beside the question. */
export interface HindcastDeps extends Pick<AnswerDeps, 'catalogue' | 'climates' | 'labels' | 'version'> {
  /** Workers, with the records to hand to them; all is worked out here where they are absent. */
  readonly workshop?: Workshop;
  readonly weather?: WeatherReader;
  /** Tallies the outcomes of kept fields; none are looked at where it is absent. */
  readonly recorded?: () => Promise<OutcomeTally>;
}

/** How a long hindcast tells of itself, and is stopped. */
export interface HindcastWatch {
  /** Years done, of all. */
  readonly progress?: (done: number, of: number) => void;
  readonly signal?: AbortSignal;
}

/** A question ready to be looked back on. */
export interface PreparedHindcast {
  readonly question: HindcastQuestion;
  readonly resolved: ResolvedQuestion;
  readonly weather: StationWeather;
  readonly season: SeasonQuestion;
  readonly years: readonly number[];
}

/**
 * Were the odds honest? Every usable year of the record, left out in turn, forecast and compared with itself.
 *
 * @throws {InvalidInputError} as the odds do, for own label entries too; NO_CARRYOVER where none is modelled; CROP_MIX for a mix of crops
 * @throws {MissingDataError} TOO_FEW_YEARS
 * @example (await hindcast({ ...demoQuestion, leadDays: [60], baseFrom: 1996 }, deps)).years.length // 30
 */
export async function hindcast(
  input: HindcastInput,
  deps: HindcastDeps,
  watch: HindcastWatch = {},
): Promise<Hindcast> {
  const prepared = await prepareHindcast(input, deps);
  const done = await yearsOf(prepared, deps, watch);
  const recorded = (await deps.recorded?.()) ?? null;
  const labelEntries = await entriesOf(prepared.question, deps.labels);
  return { ...hindcastOf(prepared, done, recorded), labelEntries, model: modelOf(deps.version) };
}

/** Years done together by a worker. */
const YEARS_PER_TASK = 6;

async function yearsOf(
  { weather, season, question, years }: PreparedHindcast,
  { workshop, weather: reader, labels: book }: HindcastDeps,
  { signal, progress }: HindcastWatch,
): Promise<HindcastYear[]> {
  let done = 0;
  const tell = (more: number) => {
    done += more;
    progress?.(done, years.length);
  };
  if (workshop && reader) {
    const packed = await packWeather(reader, question);
    const labels = namesLabel(question) ? ((await book?.labels()) ?? []) : [];
    const parts = Array.from({ length: Math.ceil(years.length / YEARS_PER_TASK) }, (_, part) =>
      years.slice(part * YEARS_PER_TASK, (part + 1) * YEARS_PER_TASK),
    );
    const tasks = parts.map(async (part) => {
      const got = await workshop.run(
        { kind: 'hindcast', question, years: part, weather: packed, labels },
        signal,
      );
      tell(part.length);
      return got;
    });
    return (await Promise.all(tasks)).flat();
  }
  const got: HindcastYear[] = [];
  for (const year of years) {
    throwIfStopped(signal);
    got.push(hindcastYear(weather.climate, season, year, question.leadDays));
    tell(1);
    await letOthersIn();
  }
  return got;
}

/** The own label entries of a question by their names. */
async function entriesOf(
  { labelEntry, otherTreatments }: HindcastQuestion,
  book: AnswerDeps['labels'],
): Promise<Hindcast['labelEntries']> {
  const ids = [labelEntry, ...otherTreatments.map((other) => other.labelEntry)];
  const known = new Map((await book?.labels())?.map(({ entry }) => [entry.id, entry.name]));
  return [...new Set(ids.filter((id) => id !== undefined))].map((id) => ({ id, name: known.get(id) ?? id }));
}

/** Whether the question rests on the user's own label entries. */
const namesLabel = ({ labelEntry, otherTreatments }: HindcastQuestion): boolean =>
  labelEntry !== undefined || otherTreatments.some((other) => other.labelEntry !== undefined);

/** Looks the question up, by the user's own label entry where it names one, and finds the years to look back on. */
export async function prepareHindcast(
  input: HindcastInput,
  deps: Pick<AnswerDeps, 'catalogue' | 'climates' | 'labels'>,
): Promise<PreparedHindcast> {
  const stored = await storedLabel(input, deps.labels);
  const question = withoutItsSeason(readQuestion(hindcastQuestionSchema, withResidual(input, stored)));
  if (speciesOf(question.crop).length > 1) {
    throw new InvalidInputError('CROP_MIX', 'A hindcast looks at one crop at a time.', {
      hint: 'Name the most sensitive species of the mix.',
      details: { field: 'crop' },
    });
  }
  const { leadDays: _leads, ...asked } = question;
  const {
    weather,
    treatments: [{ resolved }],
  } = await preparedTreatments(asked, deps);
  if (carryingApplications(resolved).length === 0) {
    throw new InvalidInputError(
      'NO_CARRYOVER',
      `No carryover is modelled for ${resolved.treatmentName} before ${resolved.cropName}, so there are no odds to look back on.`,
      {
        hint: 'Choose a residual with a rotation interval before this crop.',
        details: { field: 'residual' },
      },
    );
  }
  const season = seasonQuestionOf(resolved, weather.climate.series);
  const years = hindcastYears(weather.climate, season).map(({ year }) => year);
  if (years.length <= LEAST_YEARS) {
    throw new MissingDataError(
      'TOO_FEW_YEARS',
      `The record of ${weather.record.station.name} has ${years.length} usable years for this question; looking back needs at least ${LEAST_YEARS + 1}.`,
      { hint: 'Choose a station with a longer record or a wider base period.' },
    );
  }
  return { question, resolved, weather, season, years };
}

/** The question without what is known only of its own season. */
function withoutItsSeason(asked: HindcastQuestion): HindcastQuestion {
  const question = { ...asked, irrigation: [], gauge: [], restOfSeasonRain: 1, evidence: [] };
  delete question.asOf;
  delete question.outlook;
  return question;
}

/** Scores of the years that were looked back on. */
function hindcastOf(
  { question, resolved, weather, season }: PreparedHindcast,
  years: readonly HindcastYear[],
  recorded: OutcomeTally | null,
): Omit<Hindcast, 'model' | 'labelEntries'> {
  const places = question.leadDays.map((_, place) => place);
  const overall = hindcastScores(years, places);
  const { id, name, invented } = weather.record.station;
  const windowDays = season.plantDay - Math.min(...season.applications.map(({ appliedDay }) => appliedDay));
  return {
    question,
    residual: resolved.treatmentName,
    crop: resolved.cropName,
    station: { id, name, invented },
    soilsPerYear: SOILS_PER_YEAR,
    sentence: sentenceOf(overall, years.length),
    meaning: MEANING,
    overall: plain(overall),
    leads: question.leadDays.map((leadDays, place) => ({
      leadDays,
      plan: leadDays > windowDays,
      ...plain(hindcastScores(years, [place])),
    })),
    years: years.map((year) => ({ ...year, odds: [...year.odds] })),
    recorded,
  };
}

const plain = (scores: HindcastScores) => ({ ...scores, bins: [...scores.bins] });

function sentenceOf({ baseRate, skill, bins }: HindcastScores, years: number): string {
  const percent = (value: number) => `${Math.round(value * 100)} %`;
  const outside = bins.filter(({ meanOdds, low, high }) => meanOdds < low || meanOdds > high).length;
  const met =
    outside === 0
      ? 'in every band of odds what came lies within what chance explains'
      : `in ${outside} of ${bins.length} bands of odds what came lies beyond what chance explains`;
  const better =
    skill === null
      ? 'harm came always or never, so there is no skill to speak of'
      : skill > 0
        ? `the odds explain ${percent(skill)} more than the base rate alone`
        : 'the odds explain no more than the base rate alone';
  return `Over ${years} past years, residue would have harmed in ${sayBareOdds(baseRate)} soils and years; ${better}, and ${met}.`;
}

/** Lets requests and a stop signal through between two years. */
const letOthersIn = () => new Promise<void>((resolve) => setImmediate(resolve));
