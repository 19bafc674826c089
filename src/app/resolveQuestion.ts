import type { Application } from '../analysis/applications.ts';
import { findActive } from '../catalogue/findActive.ts';
import { findCrop } from '../catalogue/findCrop.ts';
import { parseInterval } from '../catalogue/parseInterval.ts';
import { InvalidInputError } from '../errors.ts';
import { phFactor } from '../model/breakdown/phFactor.ts';
import type { SoilTexture, TopsoilLayer } from '../model/water/topsoilLayer.ts';
import type { Answer } from '../schema/answer.ts';
import type { Active, Catalogue, Crop } from '../schema/catalogue.ts';
import type { Question } from '../schema/question.ts';
import { type FieldPart, fieldPartOf } from './fieldPart.ts';
import { catalogueLines, type LabelLine } from './labelLines.ts';
import { catalogueInterval, ownInterval, type ResolvedInterval } from './resolveInterval.ts';
import type { Treatment } from './treatment.ts';

/** Default exponent of each form of the moisture response. [-] */
const MOISTURE_EXPONENTS = { dryness: 0.5, walker: 0.7 } as const;
/** Default speed-up of breakdown per 10 °C, EFSA 2007. [-] */
const DEFAULT_Q10 = 2.58;
/** Stands in where no half-life is known and it cancels anyway: full rate on bare soil. Any figure gives the same odds. [d] */
const STAND_IN_HALF_LIFE_DAYS = 60;

/** A question with its names looked up and its dates turned into day numbers. */
export interface ResolvedQuestion extends ResolvedInterval {
  readonly question: Question;
  /** The catalogue's active; null where the user's own figures stand in for it. */
  readonly active: Active | null;
  readonly crop: Crop | null;
  readonly halfLife: Pick<Answer['inputs']['residual'], 'halfLifeDays' | 'halfLifeOrigin'>;
  readonly texture: SoilTexture;
  readonly layer: TopsoilLayer;
  readonly application: Application;
  /** The crop and the treatment as answers call them, and the treatment's mode-of-action groups. */
  readonly cropName: string;
  readonly treatmentName: string;
  readonly groups: string | null;
  /** The other actives of the product, sprayed with it; none where the treatment is one active. */
  readonly otherApplications: readonly Application[];
  /** Other treatments of the field before the same crop; none where the question names none. */
  readonly beside: readonly Treatment[];
  /** True where a condition of the label that has failed does not let the crop follow. */
  readonly labelForbids: boolean;
  /** Intervals with the conditions that they are tied to. */
  readonly lines: readonly LabelLine[];
  /** Rate of the active as sprayed [g/ha]; null where neither it nor a label's top rate is given. */
  readonly rateGramsPerHa: number | null;
  readonly plantDay: number;
}

/**
 * Looks up names, settles which interval and half-life count, and checks that dates fit together.
 * The user's own entries win over the catalogue.
 *
 * @param without numbers of the catalogue's rows that another line of their label takes the place of
 * @param ofField what the question says of field, spraying and dates; for many questions that differ in residual and
 *   crop alone it is worked out once
 * @throws {InvalidInputError} RESIDUAL_UNKNOWN, CROP_UNKNOWN, INTERVAL_UNREADABLE, what {@link fieldPartOf} throws,
 *   HALF_LIFE_MISSING (none known, and rate, overlap or leaves make it matter)
 * @throws {MissingDataError} INTERVAL_MISSING
 */
export function resolveQuestion(
  question: Question,
  catalogue: Catalogue,
  without: ReadonlySet<number> = new Set(),
  ofField: FieldPart = fieldPartOf(question),
): ResolvedQuestion {
  const { appliedDay, plantDay, texture, layer, load, canopyFraction } = ofField;
  const own = question.interval === undefined ? null : parseInterval(question.interval);
  const active = lookUp(
    () => findActive(catalogue, question.residual),
    own !== null && question.halfLifeDays !== undefined,
  );
  const crop = lookUp(() => findCrop(catalogue, question.crop), own !== null);
  const resolvedInterval =
    own !== null
      ? ownInterval(own, catalogue, active, crop, appliedDay)
      : catalogueInterval(catalogue, looked(active), looked(crop), question.country, appliedDay, without);
  const { interval } = resolvedInterval;
  const halfLife = halfLifeOf(question, active, interval.lengthDays, ofField);
  const siteFactor = phFactor(active?.ph ?? null, question.soilPh ?? null);
  const { assume } = question;
  const moisture = assume.moistureResponse;
  const ownExponent = moisture === 'dryness' ? active?.moistureExponent : null;
  return {
    question,
    active,
    crop,
    ...resolvedInterval,
    halfLife,
    texture,
    layer,
    plantDay,
    cropName: crop?.name ?? question.crop,
    treatmentName: active?.isoName ?? question.residual,
    groups: active === null ? null : String(active.group),
    otherApplications: [],
    beside: [],
    labelForbids: false,
    lines: catalogueLines(catalogue, active, crop, question.country, interval, own !== null),
    rateGramsPerHa: question.rateGramsPerHa ?? labelRateOf(active, question.rateFraction),
    application: {
      appliedDay,
      interval,
      load,
      canopyFraction,
      halfLife: assume.halfLifeFactor * (halfLife.halfLifeDays ?? STAND_IN_HALF_LIFE_DAYS),
      siteFactor,
      response: {
        q10: assume.q10 ?? active?.q10 ?? DEFAULT_Q10,
        moisture,
        moistureExponent: assume.moistureExponent ?? ownExponent ?? MOISTURE_EXPONENTS[moisture],
        snowStopsMm: assume.snowStopsMm,
      },
      group: String(active?.group ?? question.residual),
      residual: active?.isoName ?? question.residual,
    },
  };
}

/** False where no carryover is reckoned: an interval of zero, or an active that roots do not take up from soil. */
export const carriesOver = ({ active, application: { interval } }: ResolvedQuestion): boolean =>
  interval.months + interval.days > 0 && active?.soilResidual !== 'no';

/** A share of the top rate that was read on a label; an upper usual rate is no label rate, and gives none. [g/ha] */
const labelRateOf = (active: Active | null, fraction: number): number | null =>
  active?.topRateBasis === 'label' && active.topRateGramsPerHa !== null
    ? active.topRateGramsPerHa * fraction
    : null;

/** The looked-up thing, or null where the question does without it. */
function lookUp<T>(find: () => T, optional: boolean): T | null {
  try {
    return find();
  } catch (error) {
    if (optional && error instanceof InvalidInputError) return null;
    throw error;
  }
}

/** What a catalogue interval needs: without one of the user's own, no name goes without being looked up. */
function looked<T>(found: T | null): T {
  if (found === null) throw new Error('a catalogue interval needs both names looked up');
  return found;
}

/**
 * The half-life that counts. Where an active has none, label dates and conditions still stand, and so do the odds at
 * full rate on bare soil, in which the half-life cancels; whatever brings it back in is refused.
 */
function halfLifeOf(
  question: Question,
  active: Active | null,
  intervalDays: number,
  { load, canopyFraction }: FieldPart,
): ResolvedQuestion['halfLife'] {
  if (question.halfLifeDays !== undefined) {
    return { halfLifeDays: question.halfLifeDays, halfLifeOrigin: 'own entry' };
  }
  if (active?.fieldHalfLifeDays) {
    return { halfLifeDays: active.fieldHalfLifeDays.typical, halfLifeOrigin: 'catalogue' };
  }
  const cancels = load === 1 && canopyFraction === 0 && question.evidence.length === 0;
  if (active !== null && (cancels || intervalDays === 0)) {
    return { halfLifeDays: null, halfLifeOrigin: 'none' };
  }
  throw new InvalidInputError(
    'HALF_LIFE_MISSING',
    active === null
      ? `No half-life is known for ${question.residual}.`
      : `No half-life is known for ${active.isoName}, so only full rate on bare soil, without field evidence, can be reckoned: there it cancels.`,
    {
      hint: 'Give the field half-life in days, or ask for rate 1, overlap 1, no leaves and no evidence.',
      details: { field: 'halfLifeDays' },
    },
  );
}
