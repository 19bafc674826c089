import { type SeasonOdds, seasonOdds } from '../analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { type ThirdName, thirdNames } from '../analysis/thirds.ts';
import { why } from '../analysis/why.ts';
import { isoDateOf } from '../calendar.ts';
import type { Answer } from '../schema/answer.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { AskedQuestion } from '../schema/question.ts';
import type { Wording } from '../schema/wording.ts';
import { bioassayBrief } from './bioassayGuide.ts';
import { cautionsOf, notClearWords } from './cautions.ts';
import type { ClimateCache } from './climateCache.ts';
import { dayCounts } from './dayCounts.ts';
import { type BareAnswer, dressAnswer } from './dressAnswer.ts';
import { evidenceBlock } from './evidenceBlock.ts';
import { carryingApplications, fieldLabelDay, firstAppliedDay, rulingInterval } from './fieldTreatments.ts';
import type { LabelBook } from './labelBook.ts';
import { mixedAnswer } from './mixedAnswer.ts';
import { modelOf } from './modelOf.ts';
import { preparedTreatments } from './preparedTreatments.ts';
import { carriesOver, type ResolvedQuestion } from './resolveQuestion.ts';
import { type Say, sayIn } from './say.ts';
import { seasonBlock } from './seasonBlock.ts';
import { observedThrough, seasonQuestionOf } from './seasonQuestionOf.ts';
import { adviceOf, sentenceOf } from './sentence.ts';
import type { SharedSeasons } from './sharedSeasons.ts';
import type { StationWeather } from './stationWeather.ts';
import type { Treatment } from './treatment.ts';
import { whyBlock } from './whyBlock.ts';
import { zonesOf } from './zones.ts';

/** What an answer needs beside the question. */
export interface AnswerDeps {
  readonly catalogue: Catalogue;
  readonly climates: ClimateCache;
  /** Version of the program, printed with each answer. */
  readonly version: string;
  /** The user's own label entries; none where it is absent. */
  readonly labels?: Pick<LabelBook, 'labels' | 'label'>;
  /** Seasons of the comparisons before; each comparison works its own out where it is absent. */
  readonly seasons?: SharedSeasons;
  /** How amounts and dates are said in sentences; US units, and dates in words, where it is absent. */
  readonly wording?: Wording;
}

/** What an answer holds beside its figures. */
export interface AnswerOptions {
  /** Add the curves and rain that charts need. */
  readonly season?: boolean;
}

/**
 * Answers one question: one field, one treatment, one crop or mix, one date. A product of several actives is judged by
 * all of them, a mix by its most restricted species.
 *
 * @throws {InvalidInputError} where the question does not fit together; `details.field` names the culprit
 * @throws {MissingDataError} STATION_UNKNOWN, LABEL_UNKNOWN, INTERVAL_MISSING, TOO_FEW_YEARS, LATITUDE_MISSING, TEMPERATURES_MISSING
 * @example (await answerField(demoQuestion, deps)).labelDate // '2026-12-14'
 */
export async function answerField(
  input: AskedQuestion,
  deps: AnswerDeps,
  options: AnswerOptions = {},
): Promise<Answer> {
  const { question, stored, weather, treatments } = await preparedTreatments(input, deps);
  const say = sayIn(deps.wording);
  const answerTo = (resolved: ResolvedQuestion) => answerTreatment(resolved, weather, deps, options);
  const dress = (treatment: Treatment, answer: BareAnswer) =>
    dressAnswer(answer, treatment, weather, deps.catalogue, stored, say);
  const [only] = treatments;
  return treatments.length === 1
    ? dress(only, answerTo(only.resolved))
    : mixedAnswer(question, treatments, answerTo, dress, say);
}

/** One treatment before one crop, without what surrounds it. */
function answerTreatment(
  resolved: ResolvedQuestion,
  weather: StationWeather,
  deps: AnswerDeps,
  options: AnswerOptions,
): BareAnswer {
  if (carryingApplications(resolved).length === 0) {
    observedThrough(resolved.question.asOf, firstAppliedDay(resolved), weather.climate.series);
    return answerWithoutCarryover(resolved, weather, deps);
  }
  const asked = seasonQuestionOf(resolved, weather.climate.series);
  return assemble(resolved, weather, asked, seasonOdds(weather.climate, asked), deps, options);
}

function assemble(
  resolved: ResolvedQuestion,
  weather: StationWeather,
  asked: SeasonQuestion,
  odds: SeasonOdds,
  { version, catalogue, wording }: AnswerDeps,
  { season }: AnswerOptions,
): BareAnswer {
  const say = sayIn(wording);
  const dateAt = (offset: number) => isoDateOf(odds.firstDay + offset);
  const dateOrNull = (offset: number | null) =>
    offset === null || !Number.isFinite(offset) ? null : dateAt(Math.ceil(offset));
  const names: readonly ThirdName[] = thirdNames(odds.years.map(({ warmRainMm }) => warmRainMm));
  const spoken = {
    carryoverModelled: true,
    labelDate: dateAt(odds.labelOffset),
    clearDate: dateOrNull(odds.clearOffset),
    oddsAtPlanting: odds.oddsAtPlanting,
    inputs: inputsOf(resolved, say),
  };
  const said = { ...spoken, notClear: notClearWords(odds), say };
  const knownHalfLife = resolved.halfLife.halfLifeDays !== null;
  const how = bioassayBrief(resolved.active, resolved.crop, catalogue, say);
  const evidence = evidenceBlock(resolved.question.evidence, asked, odds, { how, knownHalfLife, say });
  return {
    sentence: sentenceOf(said),
    advice: adviceOf(said),
    ...spoken,
    stretch: odds.clearOffset === null ? null : odds.clearOffset / odds.labelOffset,
    oddsRange: { ...odds.range, years: odds.years.length },
    oddsAtLabelDate: odds.oddsAtLabel,
    demandBreakdownDays: odds.demands[0],
    medianBreakdownDays: odds.medianBreakdownDays,
    thirds: odds.thirds.map(({ name, odds: oddsOfThird, medianDaysToClear, warmRainMm, years }) => {
      const days =
        medianDaysToClear !== null && Number.isFinite(medianDaysToClear) ? medianDaysToClear : null;
      return {
        name,
        odds: oddsOfThird,
        clearDate: dateOrNull(days),
        medianDaysToClear: days,
        daysAfterLabel: days === null ? null : days - odds.labelOffset,
        warmRainMm,
        years: [...years],
      };
    }),
    zones: zonesOf(resolved, weather.climate, asked),
    years: odds.years.map((year, index) => ({
      year: year.year,
      third: names[index],
      weight: odds.weights[index],
      breakdownDays: year.breakdownDaysAtPlanting,
      probability: year.probabilityAt(odds.plantOffset),
      clearDate: dateOrNull(year.clearOffset),
      warmRainMm: year.warmRainMm,
    })),
    why: whyBlock(why(weather.climate, asked, odds), odds, say),
    evidence,
    cautions: [
      ...cautionsOf(resolved, weather, odds, catalogue, say),
      ...(evidence.bioassay.worthIt ? [{ code: 'bioassay', text: evidence.bioassay.text }] : []),
    ],
    model: modelOf(version),
    weather: weatherOf(weather, odds),
    ...(season ? { season: seasonBlock(weather.climate, asked, odds, (index) => names[index]) } : {}),
  };
}

/** An interval of zero, or an active that roots do not take up from soil: no carryover, whatever the load. */
function answerWithoutCarryover(
  resolved: ResolvedQuestion,
  weather: StationWeather,
  { version, catalogue, wording }: AnswerDeps,
): BareAnswer {
  const say = sayIn(wording);
  const labelDate = isoDateOf(fieldLabelDay(resolved));
  const spoken = {
    carryoverModelled: false,
    labelDate,
    clearDate: labelDate,
    oddsAtPlanting: null,
    inputs: inputsOf(resolved, say),
  };
  const said = { ...spoken, notClear: '', say };
  return {
    sentence: sentenceOf(said),
    advice: adviceOf(said),
    ...spoken,
    stretch: null,
    oddsRange: null,
    oddsAtLabelDate: null,
    demandBreakdownDays: null,
    medianBreakdownDays: null,
    thirds: [],
    zones: resolved.question.zones.map((zone) => ({ ...zone, oddsAtPlanting: null, clearDate: labelDate })),
    years: [],
    why: null,
    evidence: null,
    cautions: cautionsOf(resolved, weather, null, catalogue, say),
    model: modelOf(version),
    weather: weatherOf(weather, null),
  };
}

function inputsOf(resolved: ResolvedQuestion, say: Say): BareAnswer['inputs'] {
  const { question, treatmentName, groups, cropName, halfLife, texture, layer } = resolved;
  return {
    question,
    residual: { name: treatmentName, group: groups, ...halfLife },
    crop: cropName,
    interval: rulingInterval(resolved, say),
    mainInterval: resolved.interval,
    otherTreatments: resolved.beside.map(besideInput),
    canopyFraction: resolved.application.canopyFraction,
    soil: {
      texture:
        'textureClass' in texture
          ? texture.textureClass
          : `${Math.round(texture.sand * 100)} % sand, ${Math.round(texture.clay * 100)} % clay`,
      thetaFieldCapacity: layer.thetaFieldCapacity,
      thetaWiltingPoint: layer.thetaWiltingPoint,
      evaporableWaterMm: layer.tewMm,
    },
  };
}

function besideInput({ resolved }: Treatment): BareAnswer['inputs']['otherTreatments'][number] {
  const { question, treatmentName, groups, interval, halfLife, application } = resolved;
  return {
    residual: { name: treatmentName, group: groups, ...halfLife },
    appliedOn: question.appliedOn,
    interval,
    labelDate: isoDateOf(application.appliedDay + interval.lengthDays),
    leavesResidue: carriesOver(resolved),
  };
}

function weatherOf({ record, climate, help }: StationWeather, odds: SeasonOdds | null): Answer['weather'] {
  const { series } = climate;
  const years = odds?.years.map(({ year }) => year) ?? [];
  const { rainMissing, rainSpread, temperatureFilled } = dayCounts(series);
  return {
    station: series.station,
    source: record.source,
    firstDate: isoDateOf(series.firstDay),
    lastDate: isoDateOf(series.firstDay + series.days - 1),
    firstYear: years[0] ?? null,
    lastYear: years.at(-1) ?? null,
    yearsUsed: years.length,
    missingRainPercent: (rainMissing / series.days) * 100,
    help,
    spreadRainDays: rainSpread,
    filledTemperatureDays: temperatureFilled,
    observedThrough: odds && odds.observedDays > 0 ? isoDateOf(odds.firstDay + odds.observedDays - 1) : null,
  };
}
