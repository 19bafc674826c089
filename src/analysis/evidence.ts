import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { isoDateOf } from '../calendar.ts';
import { InvalidInputError } from '../errors.ts';
import { injuryProbability } from '../model/evidence/bioassayLikelihood.ts';
import { logResidue } from '../model/evidence/logResidue.ts';
import { type LogLikelihood, type SoilPosterior, soilPosterior } from '../model/evidence/soilPosterior.ts';
import { soilTestLogLikelihood } from '../model/evidence/soilTestLikelihood.ts';
import type { ResiduePart } from '../model/odds/carryoverProbability.ts';
import type { Assumptions } from '../schema/assumptions.ts';
import { type JudgedTreatment, soilParts } from './residueCourse.ts';

/** What was found in the field on a day. */
export type Finding =
  | {
      readonly kind: 'soil test';
      readonly day: number;
      /** Residue found over the full label dose in the sampled depth [-], > 0. */
      readonly fractionLeft: number;
      /** Residual that was looked for; all that was sprayed where absent. */
      readonly residual?: string;
    }
  | { readonly kind: 'bioassay'; readonly day: number; readonly injured: boolean };

/** A probability of harm once the first n findings are in, of one before any. */
export type Updating = (probability: number) => number;

/** What a year's treatments are, group by group; see {@link soilParts}. */
export type TreatmentGroups = readonly (readonly JudgedTreatment[])[];

/** Remembers what each finding says of the soil, so that years which agree on the season so far share the work. */
export type EvidenceMemory = Map<string, SoilPosterior>;

/**
 * Checks that findings lie in the part of the season that is observed, and puts them in order.
 *
 * @param observedDays days from the first application that are observed
 * @throws {InvalidInputError} EVIDENCE_DATE
 */
export function findingsInOrder(
  findings: readonly Finding[],
  firstDay: number,
  observedDays: number,
): Finding[] {
  for (const { kind, day } of findings) {
    if (day >= firstDay && day - firstDay <= observedDays && observedDays > 0) continue;
    throw new InvalidInputError(
      'EVIDENCE_DATE',
      day < firstDay
        ? `The ${kind} of ${isoDateOf(day)} was taken before the application on ${isoDateOf(firstDay)}.`
        : `The ${kind} of ${isoDateOf(day)} lies after the last day whose weather is observed.`,
      {
        hint: 'Give a date from the application on, and an as-of date (asOf) no more than a day before it.',
        details: { field: 'evidence' },
      },
    );
  }
  return findings.toSorted((a, b) => a.day - b.day);
}

/**
 * What each further finding makes of a year's probabilities: entry n − 1 takes the first n into account. A finding on
 * a day when the model has nothing in the soil tells nothing.
 */
export function updatings(
  groups: TreatmentGroups,
  findings: readonly Finding[],
  firstDay: number,
  assumptions: Assumptions,
  memory: EvidenceMemory,
): Updating[] {
  const told = findings.map((finding) => likelihoodOf(groups, finding, firstDay, assumptions));
  return told.map((_, last) => {
    const upTo = told.slice(0, last + 1);
    const key = upTo.map((one) => one.key).join('|');
    const posterior = memory.get(key) ?? soilPosterior(upTo.map((one) => one.likelihood));
    memory.set(key, posterior);
    return (probability) =>
      probability <= 0 || probability >= 1
        ? probability
        : posterior.massBelow(normalQuantile(probability, 0, 1));
  });
}

function likelihoodOf(
  groups: TreatmentGroups,
  finding: Finding,
  firstDay: number,
  assumptions: Assumptions,
): { key: string; likelihood: LogLikelihood } {
  const offset = finding.day - firstDay;
  const { soilSpread } = assumptions;
  const residue = (treatments: readonly JudgedTreatment[]) => soilParts(treatments, assumptions, offset);
  if (finding.kind === 'soil test') {
    const soughtIn = (one: JudgedTreatment) =>
      finding.residual === undefined || one.residual === finding.residual;
    const doses = groups.flatMap((group) =>
      residue(group.filter(soughtIn).map((one) => ({ ...one, logMargin: 0 }))),
    );
    return {
      key: keyOf(finding, [doses]),
      likelihood: (z) =>
        doses.length === 0
          ? 0
          : soilTestLogLikelihood(finding.fractionLeft, logResidue(doses, soilSpread, z), assumptions.testCv),
    };
  }
  const indices = groups.map(residue).filter((parts) => parts.length > 0);
  const trust = {
    sensitivity: assumptions.bioassaySensitivity,
    specificity: assumptions.bioassaySpecificity,
    spread: assumptions.bioassaySpread,
  };
  return {
    key: keyOf(finding, indices),
    likelihood: (z) => {
      if (indices.length === 0) return 0;
      const worst = Math.max(...indices.map((parts) => logResidue(parts, soilSpread, z)));
      const injured = injuryProbability(worst, trust);
      return Math.log(finding.injured ? injured : 1 - injured);
    },
  };
}

const keyOf = (finding: Finding, parts: readonly (readonly ResiduePart[])[]): string =>
  JSON.stringify([finding, parts]);
