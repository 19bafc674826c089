import { findCrop } from '../catalogue/findCrop.ts';
import { sayInterval } from '../catalogue/intervalLength.ts';
import { parseInterval } from '../catalogue/parseInterval.ts';
import { InvalidInputError, MissingDataError } from '../errors.ts';
import { type Interval, labelDateOf } from '../model/calendar/interval.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { LabelEntry } from '../schema/labelEntry.ts';
import type { Question } from '../schema/question.ts';
import { type ResolvedQuestion, resolveQuestion } from './resolveQuestion.ts';

/** A question answered by the user's own label entry, each active of the product looked up. */
export interface EnteredQuestion {
  readonly resolved: ResolvedQuestion;
  /** One for each active of the product, in the order of the entry. */
  readonly actives: readonly ResolvedQuestion[];
  /** The label's own words on conditions; empty where there are none. */
  readonly conditionsInWords: string;
  /** The label's wait for food and feed, in words; null where it gives none apart. */
  readonly foodFeedInterval: string | null;
}

/**
 * Resolves a question by a label entry: its interval for the crop, its conditions, and every active of the product as an
 * application of the same day. An active that roots do not take up from soil takes no part in the load. The wait for food
 * and feed holds the label date back unless the stand is a cover that is neither harvested nor grazed; the odds, which
 * are of injury, go by the crop's own interval.
 *
 * @throws {MissingDataError} INTERVAL_MISSING where the entry has no line for the crop
 * @throws {InvalidInputError} LABEL_ACTIVE where the question names an active that the product does not hold,
 *   LABEL_INTERVAL where it brings another interval too; and what {@link resolveQuestion} throws
 */
export function resolveEntered(question: Question, entry: LabelEntry, catalogue: Catalogue): EnteredQuestion {
  const line = lineOf(question.crop, entry, catalogue);
  const own = parseInterval(line.interval);
  checkInterval(question, entry, line.crop, own);
  const asked = question.residual.trim().toLowerCase();
  const names = entry.actives.map(({ name }) => name);
  if (![entry.id, entry.name, ...names].some((name) => name.trim().toLowerCase() === asked)) {
    throw new InvalidInputError('LABEL_ACTIVE', `${entry.name} does not hold ${question.residual}.`, {
      hint: `Name one of its actives: ${names.join(', ')}.`,
      details: { field: 'residual', known: names },
    });
  }
  const actives = entry.actives.map(({ name, rateGramsPerHa, halfLifeDays }) => {
    const one = resolveQuestion(
      {
        ...question,
        residual: name,
        interval: sayInterval(own),
        halfLifeDays: halfLifeDays ?? (names.length === 1 ? question.halfLifeDays : undefined),
      },
      catalogue,
    );
    const ownRate =
      name.trim().toLowerCase() === asked || names.length === 1 ? question.rateGramsPerHa : undefined;
    const labelRate = rateGramsPerHa === undefined ? null : rateGramsPerHa * question.rateFraction;
    return { ...one, rateGramsPerHa: ownRate ?? labelRate };
  });
  const carrying = actives.filter(({ active }) => active?.soilResidual !== 'no');
  const [lead, ...others] = carrying.length > 0 ? carrying : actives;
  const { foodFeedInterval } = line;
  const labelDay = labelDayFor(lead.application.appliedDay, own, foodFeedInterval, question.standUse);
  return {
    resolved: {
      ...lead,
      question,
      interval: { ...lead.interval, lengthDays: labelDay - lead.application.appliedDay },
      application: { ...lead.application, notBefore: labelDay },
      treatmentName: actives.map(({ treatmentName }) => treatmentName).join(' + '),
      groups: groupsOf(actives),
      otherApplications: others.map(({ application }) => ({ ...application, notBefore: labelDay })),
      lines:
        line.clauses.length === 0
          ? []
          : [{ interval: own, shortest: own, clauses: line.clauses, row: null, setsDate: true }],
    },
    actives,
    conditionsInWords: line.conditions,
    foodFeedInterval: foodFeedInterval === undefined ? null : sayInterval(parseInterval(foodFeedInterval)),
  };
}

/** Label date by the crop's own interval, and by the wait for food and feed where the stand comes to that. [day number] */
function labelDayFor(
  appliedDay: number,
  own: Interval,
  foodFeed: string | undefined,
  standUse: Question['standUse'],
) {
  const safeDay = labelDateOf(appliedDay, own);
  if (foodFeed === undefined || standUse === 'cover only') return safeDay;
  return Math.max(safeDay, labelDateOf(appliedDay, parseInterval(foodFeed)));
}

/** One question, one interval: the entry's. */
function checkInterval({ interval }: Question, { name }: LabelEntry, crop: string, own: Interval): void {
  if (interval === undefined || sayInterval(parseInterval(interval)) === sayInterval(own)) return;
  throw new InvalidInputError(
    'LABEL_INTERVAL',
    `The question gives an interval of ${interval}, and your entry of ${name} has ${sayInterval(own)} before ${crop}.`,
    {
      hint: 'Leave the interval out, or correct the entry.',
      details: { field: 'interval', entered: sayInterval(own) },
    },
  );
}

/** The groups of the actives that are known, each once; null where none is. */
function groupsOf(actives: readonly ResolvedQuestion[]): string | null {
  const groups = new Set(actives.flatMap((one) => (one.groups === null ? [] : [one.groups])));
  return groups.size === 0 ? null : [...groups].join(' + ');
}

function lineOf(crop: string, entry: LabelEntry, catalogue: Catalogue) {
  const line = lineFor(crop, entry, catalogue);
  if (line !== undefined) return line;
  const { name, intervals } = entry;
  const asked = cropName(crop, catalogue);
  throw new MissingDataError('INTERVAL_MISSING', `Your entry of ${name} has no interval for ${asked}.`, {
    hint: `Read it from the label and add it to the entry; it has ${intervals.map((one) => one.crop).join(', ')}.`,
    details: { field: 'labelEntry', crop: asked, known: intervals.map((one) => one.crop) },
  });
}

/** What an entry says of a crop; undefined where it says nothing. */
export const lineFor = (crop: string, { intervals }: LabelEntry, catalogue: Catalogue) =>
  intervals.find((one) => cropName(one.crop, catalogue) === cropName(crop, catalogue));

/** The catalogue's name of a crop, or the user's own in small letters. */
export function cropName(crop: string, catalogue: Catalogue): string {
  try {
    return findCrop(catalogue, crop).name;
  } catch (error) {
    if (error instanceof InvalidInputError) return crop.trim().toLowerCase();
    throw error;
  }
}
