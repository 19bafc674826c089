import { randomUUID } from 'node:crypto';
import { DrywakeError } from '../errors.ts';
import type { Batch, BatchAnswer } from '../schema/batch.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { StoredLabel } from '../schema/labelEntry.ts';
import { type AskedQuestion, type QuestionInput, questionSchema } from '../schema/question.ts';
import { type AskedRow, askedRows, assertAskable, type FieldList } from './askedRows.ts';
import { doTask } from './doTask.ts';
import { type KeptClimates, keepClimates } from './keptClimates.ts';
import type { LabelBook } from './labelBook.ts';
import { packWeather } from './packedWeather.ts';
import { rankedBatch } from './rankedBatch.ts';
import { readQuestion } from './readQuestion.ts';
import { throwIfStopped } from './stopped.ts';
import type { WeatherReader } from './weatherReader.ts';
import type { PackedWeather, Workshop } from './workshop.ts';

/** Rows of one station handed to a worker at once. */
const ROWS_PER_TASK = 250;

export interface BatchDeps {
  /** Version of the program, which the answers name. */
  readonly version: string;
  readonly catalogue: Catalogue;
  readonly weather: WeatherReader;
  /** Workers; all is worked out here where it is absent. */
  readonly workshop?: Workshop;
  /** The user's own label entries; none where it is absent. */
  readonly labels?: Pick<LabelBook, 'labels'>;
}

/** How a long list tells of itself, and is stopped. */
export interface BatchWatch {
  /** Rows done, of all. */
  readonly progress?: (done: number, of: number) => void;
  readonly signal?: AbortSignal;
}

/**
 * Every field of a list answered, ranked by odds times area. A row that cannot be answered says why and holds nothing up.
 * The result does not depend on the number of workers.
 *
 * @param shared fields of the question that hold for rows which do not set them
 * @throws {InvalidInputError} BATCH_EMPTY, BATCH_COLUMNS
 * @throws {ConflictError} STOPPED
 * @example (await batch(readFieldList(fieldListTemplate(), 'list.csv'), {}, { version, catalogue, weather })).answered // 1
 */
export async function batch(
  list: FieldList,
  shared: Partial<QuestionInput>,
  deps: BatchDeps,
  watch: BatchWatch = {},
): Promise<Batch> {
  assertAskable(list, shared);
  const rows = askedRows(list, shared);
  const answers = new Array<BatchAnswer>(rows.length);
  const here = keepClimates();
  let done = 0;
  const under = new Set<Promise<void>>();
  const most = (deps.workshop?.workers ?? 1) * 2;
  const labels = await labelsFor(rows, deps);
  const listId = randomUUID();
  for (const [place, group] of groupsOf(rows).entries()) {
    const packed = await packedOr(deps.weather, rows[group[0]]);
    const common = { packed, labels, weatherId: `${listId} ${place}` };
    for (let from = 0; from < group.length; from += ROWS_PER_TASK) {
      throwIfStopped(watch.signal);
      const part = group.slice(from, from + ROWS_PER_TASK);
      const questions = part.map((row) => rows[row].question);
      const task = answersOf(questions, common, deps, here, watch.signal).then((got) => {
        part.forEach((row, index) => {
          answers[row] = got[index];
        });
        done += part.length;
        watch.progress?.(done, rows.length);
        under.delete(task);
      });
      under.add(task);
      task.catch(() => undefined);
      if (under.size >= most) await Promise.race(under);
    }
  }
  await Promise.all(under);
  return rankedBatch(list, rows, answers, deps.version);
}

/** The records of a row's station; or what keeps them from being read, which then answers all its rows. */
async function packedOr(
  weather: WeatherReader,
  { question }: AskedRow,
): Promise<PackedWeather | DrywakeError> {
  try {
    return await packWeather(weather, readQuestion(questionSchema, climateOf(question)));
  } catch (error) {
    if (error instanceof DrywakeError) return error;
    throw error;
  }
}

/** A question that has the same climate, whatever else is amiss with the row. */
const climateOf = ({ station, latitudeDeg, temperatureStation, fillFromNeighbours }: AskedQuestion) => ({
  ...{ station, latitudeDeg, temperatureStation, fillFromNeighbours },
  ...{ residual: 'any', crop: 'any', appliedOn: '2000-01-01', plantOn: '2000-01-01' },
});

/** The label entries, where any row names one. */
async function labelsFor(rows: readonly AskedRow[], { labels }: BatchDeps): Promise<readonly StoredLabel[]> {
  if (labels === undefined || rows.every(({ question }) => question.labelEntry === undefined)) return [];
  return labels.labels();
}

/** What the rows of one station have in common. */
interface Common {
  readonly packed: PackedWeather | DrywakeError;
  readonly labels: readonly StoredLabel[];
  readonly weatherId: string;
}

async function answersOf(
  questions: AskedQuestion[],
  { packed, labels, weatherId }: Common,
  { catalogue, workshop }: BatchDeps,
  here: KeptClimates,
  signal?: AbortSignal,
): Promise<BatchAnswer[]> {
  if (packed instanceof DrywakeError) {
    const { code, message, hint, details } = packed;
    return questions.map(() => ({ answer: null, problem: { code, message, hint, details } }));
  }
  const task = { kind: 'batch', questions, weather: packed, weatherId, labels } as const;
  if (workshop) return workshop.run(task, signal);
  const answers = (await doTask(task, catalogue, here)) as BatchAnswer[];
  await new Promise<void>((resolve) => setImmediate(resolve));
  return answers;
}

/**
 * Places of rows that share a climate, in the order in which each first comes; within one, rows that may share a season
 * stand together.
 */
function groupsOf(rows: readonly AskedRow[]): number[][] {
  const groups = new Map<string, number[]>();
  rows.forEach(({ question }, row) => {
    const key = JSON.stringify(climateOf(question));
    const places = groups.get(key);
    if (places) places.push(row);
    else groups.set(key, [row]);
  });
  const seasons = rows.map(({ question: { plantOn: _, crop: __, residual: ___, ...season } }) =>
    JSON.stringify(season),
  );
  const bySeason = (one: number, other: number) =>
    seasons[one] === seasons[other] ? one - other : seasons[one] < seasons[other] ? -1 : 1;
  return [...groups.values()].map((places) => places.sort(bySeason));
}
