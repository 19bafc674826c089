import { findCrop } from '../catalogue/findCrop.ts';
import { sayInterval } from '../catalogue/intervalLength.ts';
import { parseInterval } from '../catalogue/parseInterval.ts';
import { InvalidInputError, MissingDataError } from '../errors.ts';
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
}

/**
 * Resolves a question by a label entry: its interval for the crop, its conditions, and every active of the product as an
 * application of the same day. An active that roots do not take up from soil takes no part in the load.
 *
 * @throws {MissingDataError} INTERVAL_MISSING where the entry has no line for the crop
 * @throws {InvalidInputError} LABEL_ACTIVE where the question names an active that the product does not hold; and what
 *   {@link resolveQuestion} throws
 */
export function resolveEntered(question: Question, entry: LabelEntry, catalogue: Catalogue): EnteredQuestion {
  const line = lineOf(question.crop, entry, catalogue);
  const own = parseInterval(line.interval);
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
    const rate = rateGramsPerHa === undefined ? one.rateGramsPerHa : rateGramsPerHa * question.rateFraction;
    return { ...one, rateGramsPerHa: rate };
  });
  const carrying = actives.filter(({ active }) => active?.soilResidual !== 'no');
  const [lead, ...others] = carrying.length > 0 ? carrying : actives;
  return {
    resolved: {
      ...lead,
      question,
      treatmentName: actives.map(({ treatmentName }) => treatmentName).join(' + '),
      groups: groupsOf(actives),
      otherApplications: others.map(({ application }) => application),
      lines: [{ interval: own, shortest: own, clauses: line.clauses, setsDate: true }],
    },
    actives,
    conditionsInWords: line.conditions,
  };
}

/** The groups of the actives that are known, each once; null where none is. */
function groupsOf(actives: readonly ResolvedQuestion[]): string | null {
  const groups = new Set(actives.flatMap((one) => (one.groups === null ? [] : [one.groups])));
  return groups.size === 0 ? null : [...groups].join(' + ');
}

function lineOf(crop: string, { name, intervals }: LabelEntry, catalogue: Catalogue) {
  const asked = cropName(crop, catalogue);
  const line = intervals.find((one) => cropName(one.crop, catalogue) === asked);
  if (line !== undefined) return line;
  throw new MissingDataError('INTERVAL_MISSING', `Your entry of ${name} has no interval for ${asked}.`, {
    hint: `Read it from the label and add it to the entry; it has ${intervals.map((one) => one.crop).join(', ')}.`,
    details: { field: 'labelEntry', crop: asked, known: intervals.map((one) => one.crop) },
  });
}

/** The catalogue's name of a crop, or the user's own in small letters. */
function cropName(crop: string, catalogue: Catalogue): string {
  try {
    return findCrop(catalogue, crop).name;
  } catch (error) {
    if (error instanceof InvalidInputError) return crop.trim().toLowerCase();
    throw error;
  }
}
