import { labelDateOf } from '../model/calendar/interval.ts';
import { daysToCleanLeaves } from '../model/deposit/leafWashOff.ts';
import { demandBreakdownDays } from '../model/odds/demand.ts';
import { logLabelMargin } from '../model/odds/labelMargin.ts';
import { irrigationCourse } from '../model/weather/ownRecords.ts';
import type { Application } from './applications.ts';
import { type BreakdownRecord, breakdownRecord } from './breakdownRecord.ts';
import { type EvidenceMemory, findingsInOrder, type Updating, updatings } from './evidence.ts';
import { type HistoricalYear, historicalYears } from './historicalYears.ts';
import { heldFrom } from './quickCurve.ts';
import { type JudgedTreatment, type ResidueCourse, residueCourse } from './residueCourse.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import type { StationClimate } from './stationClimate.ts';
import { seasonTraces, type Trace } from './traces.ts';

/** One historical year's answer. */
export interface YearCourse extends HistoricalYear {
  /** Probability of harm at an offset that its record reaches [0-1]. */
  readonly probabilityAt: ResidueCourse;
  /** Last offset that its record reaches [d]. */
  readonly lastOffset: number;
  /** Probability at each of those offsets; worked out when it is first asked for [0-1]. */
  readonly probabilities: Float64Array;
  /** Probability at planting before any evidence, then after the first finding, the first two, … [0-1]. */
  readonly atPlantingByEvidence: readonly number[];
  /** Breakdown days from the first application to planting [breakdown days]. */
  readonly breakdownDaysAtPlanting: number;
  /** Warm rain of the year's own record from application to label date [mm]. */
  readonly warmRainMm: number;
  /** First offset from the label date on at which its own probability stays at or under the limit;
   * Infinity where it never does within the search; null where its record ends before. */
  readonly clearOffset: number | null;
}

/** Offsets of a question's dates from the first application [d]. */
export interface SeasonOffsets {
  readonly firstDay: number;
  readonly labelOffset: number;
  readonly plantOffset: number;
  readonly horizonOffset: number;
}

/** An application with what its label asks for, and the course of breakdown in each year. */
export interface JudgedApplication {
  readonly application: Application;
  /** The application where evidence was taken; mostly the same. */
  readonly sampled: Application;
  /** What the label interval asks for [breakdown days]. */
  readonly demand: number;
  /** ln(1/τ) [-]. */
  readonly logMargin: number;
  /** One trace for each year, in their order. */
  readonly traces: readonly Trace[];
}

/** Demands and, for each usable year, the course of its probability of harm. */
export function carryoverYears(
  climate: StationClimate,
  question: SeasonQuestion,
  offsets: SeasonOffsets,
): {
  years: YearCourse[];
  judged: JudgedApplication[];
  observedDays: number;
  /** Offset from which every probability only falls [d]. */
  fallsFrom: number;
} {
  const { applications, assumptions, layer } = question;
  const { firstDay, labelOffset, plantOffset, horizonOffset } = offsets;
  const windowDays = Math.max(labelOffset, plantOffset) + 1;
  const years = historicalYears(climate, firstDay, windowDays, question.base);
  const observedDays = Math.max(0, (question.asOfDay ?? firstDay - 1) - firstDay + 1);

  const irrigation = irrigationCourse(question.irrigation ?? [], firstDay, horizonOffset);

  const findings = findingsInOrder(question.evidence ?? [], firstDay, observedDays);
  const memory: EvidenceMemory = new Map();

  const judged = applications.map((application, index): JudgedApplication => {
    const record = breakdownRecord(climate, layer, application.response, assumptions);
    const demand = demandOf(application, record, years, firstDay, assumptions.demandFloorFraction);
    const { halfLife } = application;
    return {
      application,
      sampled: question.sampled?.[index] ?? application,
      demand,
      logMargin: logLabelMargin(demand, halfLife, assumptions.soilSpread, assumptions.labelMargin),
      traces: seasonTraces(climate, record, layer, application.response, years, {
        start: firstDay - climate.series.firstDay,
        observedDays,
        restOfSeasonRain: question.restOfSeasonRain,
        irrigation,
        horizonDays: horizonOffset,
        meltMmPerDegreeDay: assumptions.meltMmPerDegreeDay,
        basis: assumptions,
      }),
    };
  });

  const fallsFrom = Math.max(...judged.map((one) => fallsFromOf(one, firstDay, assumptions)));
  const courses = years.map((year, index): YearCourse => {
    const groups = treatmentGroups(judged, index, firstDay);
    const [{ trace }] = groups[0];
    const before = worstOfGroups(groups, assumptions);
    const after =
      findings.length === 0
        ? []
        : updatings(sampledGroups(judged, index, firstDay), findings, firstDay, assumptions, memory);
    const update = after.at(-1);
    const probabilityAt = update ? (offset: number) => update(before(offset)) : before;
    const { lastOffset } = trace;
    let probabilities: Float64Array | undefined;
    return {
      ...year,
      probabilityAt,
      lastOffset,
      get probabilities() {
        probabilities ??= Float64Array.from({ length: lastOffset + 1 }, (_, offset) => probabilityAt(offset));
        return probabilities;
      },
      atPlantingByEvidence: stepsOf(before(plantOffset), after),
      breakdownDaysAtPlanting: trace.sums[trace.base + plantOffset] - trace.sums[trace.base],
      warmRainMm: climate.warmRain[year.start + labelOffset] - climate.warmRain[year.start],
      clearOffset: ownClearOffset((offset) => probabilityAt(offset) <= question.oddsLimit, {
        labelOffset,
        lastOffset,
        horizonOffset,
        fallsFrom,
      }),
    };
  });
  return { years: courses, judged, observedDays, fallsFrom };
}

const stepsOf = (probability: number, after: readonly Updating[]): number[] => [
  probability,
  ...after.map((update) => update(probability)),
];

/** The treatments of one year, those of one mode-of-action group together. */
export function treatmentGroups(
  judged: readonly JudgedApplication[],
  index: number,
  firstDay: number,
): JudgedTreatment[][] {
  const groups = new Map<string, JudgedTreatment[]>();
  for (const { application, logMargin, traces } of judged) {
    const group = groups.get(application.group) ?? [];
    groups.set(application.group, group);
    group.push({
      trace: traces[index],
      offsetDays: application.appliedDay - firstDay,
      logMargin,
      load: application.load,
      canopyFraction: application.canopyFraction,
      siteHalfLife: application.halfLife * application.siteFactor,
      residual: application.residual,
    });
  }
  return [...groups.values()];
}

/** {@link treatmentGroups} where evidence was taken. */
export const sampledGroups = (
  judged: readonly JudgedApplication[],
  index: number,
  firstDay: number,
): JudgedTreatment[][] =>
  treatmentGroups(
    judged.map((one) => ({ ...one, application: one.sampled })),
    index,
    firstDay,
  );

function demandOf(
  { appliedDay, interval }: Application,
  { labelSums }: BreakdownRecord,
  years: readonly HistoricalYear[],
  firstDay: number,
  floorFraction: number,
): number {
  const intervalDays = labelDateOf(appliedDay, interval) - appliedDay;
  const labelBreakdownDays = years.map(({ start }) => {
    const from = start + appliedDay - firstDay;
    return labelSums[from + intervalDays] - labelSums[from];
  });
  return demandBreakdownDays(labelBreakdownDays, intervalDays, floorFraction);
}

/** Residues of one mode-of-action group add up; different groups are judged apart and the worst governs. */
function worstOfGroups(
  groups: readonly (readonly JudgedTreatment[])[],
  assumptions: SeasonQuestion['assumptions'],
): ResidueCourse {
  const courses = groups.map((group) => residueCourse(group, assumptions.soilSpread, assumptions));
  if (courses.length === 1) return courses[0];
  return (offset) => Math.max(...courses.map((course) => course(offset)));
}

/** Offset from which nothing more of an application reaches the soil. [d] */
function fallsFromOf(
  { application: { appliedDay, canopyFraction } }: JudgedApplication,
  firstDay: number,
  { foliageHalfLifeDays }: SeasonQuestion['assumptions'],
): number {
  const onLeaves = canopyFraction > 0 ? daysToCleanLeaves(foliageHalfLifeDays) + 1 : 0;
  return appliedDay - firstDay + onLeaves;
}

function ownClearOffset(
  within: (offset: number) => boolean,
  {
    labelOffset,
    lastOffset,
    horizonOffset,
    fallsFrom,
  }: Record<'labelOffset' | 'lastOffset' | 'horizonOffset' | 'fallsFrom', number>,
): number | null {
  const own = heldFrom(within, labelOffset, lastOffset, fallsFrom);
  if (own !== null) return own;
  return lastOffset >= horizonOffset ? Number.POSITIVE_INFINITY : null;
}
