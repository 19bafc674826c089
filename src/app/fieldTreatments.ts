import type { Application } from '../analysis/applications.ts';
import { InvalidInputError } from '../errors.ts';
import type { Answer } from '../schema/answer.ts';
import { carriesOver, type ResolvedQuestion } from './resolveQuestion.ts';
import type { Say } from './say.ts';

/** The main treatment and the field's others. */
const all = (resolved: ResolvedQuestion): ResolvedQuestion[] => [
  resolved,
  ...resolved.beside.map((treatment) => treatment.resolved),
];

const ownLabelDay = ({ application, interval }: ResolvedQuestion): number =>
  application.appliedDay + interval.lengthDays;

/** The label date of a field: the latest of its treatments'. [day number] */
export const fieldLabelDay = (resolved: ResolvedQuestion): number =>
  Math.max(...all(resolved).map(ownLabelDay));

/** The day of the first treatment. [day number] */
export const firstAppliedDay = (resolved: ResolvedQuestion): number =>
  Math.min(...all(resolved).map(({ application }) => application.appliedDay));

/** How many applications of the main treatment come first in {@link carryingApplications}. */
export const mainApplications = (resolved: ResolvedQuestion): number => ownApplications(resolved).length;

/** A treatment's own applications whose residue counts. */
const ownApplications = (one: ResolvedQuestion): Application[] =>
  carriesOver(one) ? [one.application, ...one.otherApplications] : [];

/** The applications whose residue counts, the main treatment's first; each waits for the field's label date. */
export function carryingApplications(resolved: ResolvedQuestion): Application[] {
  if (resolved.beside.length === 0) return ownApplications(resolved);
  const labelDay = fieldLabelDay(resolved);
  return all(resolved)
    .flatMap(ownApplications)
    .map((one) => ({
      ...one,
      notBefore: Math.max(labelDay, one.notBefore ?? Number.NEGATIVE_INFINITY),
    }));
}

/** The interval that sets the field's label date: the main treatment's, or another's with its name. */
export function rulingInterval(resolved: ResolvedQuestion, { dates }: Say): Answer['inputs']['interval'] {
  const labelDay = fieldLabelDay(resolved);
  if (ownLabelDay(resolved) === labelDay) return resolved.interval;
  const ruling = all(resolved).find((one) => ownLabelDay(one) === labelDay) ?? resolved;
  const { question, interval, treatmentName } = ruling;
  return {
    ...interval,
    text: `${interval.text} after ${treatmentName} of ${dates.full(question.appliedOn)}`,
    lengthDays: labelDay - resolved.application.appliedDay,
  };
}

/**
 * Refuses residues that would have to be added up, where one has no known half-life: only by itself it cancels.
 * @throws {InvalidInputError} HALF_LIFE_MISSING
 */
export function refuseUnknownSums(actives: readonly ResolvedQuestion[]): void {
  const carrying = actives.filter(carriesOver);
  for (const one of carrying) {
    const { halfLife, application, treatmentName } = one;
    const joined = carrying.some((other) => other !== one && other.application.group === application.group);
    if (halfLife.halfLifeDays !== null || !joined) continue;
    throw new InvalidInputError(
      'HALF_LIFE_MISSING',
      `No half-life is known for ${treatmentName}, so it cannot be added to another residue of its group.`,
      { hint: 'Give its field half-life in days.', details: { field: 'halfLifeDays' } },
    );
  }
}
