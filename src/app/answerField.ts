import { type SeasonOdds, seasonOdds } from '../analysis/seasonOdds.ts';
import { type ThirdName, thirdNames } from '../analysis/thirds.ts';
import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { InvalidInputError } from '../errors.ts';
import type { Answer } from '../schema/answer.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import { isRainMissing, RAIN_SPREAD, TEMP_OBSERVED } from '../schema/codes.ts';
import { type QuestionInput, questionSchema } from '../schema/question.ts';
import type { DailySeries } from '../schema/weather.ts';
import { cautionsOf, notClearWords } from './cautions.ts';
import type { ClimateCache, StationWeather } from './climateCache.ts';
import { readQuestion } from './readQuestion.ts';
import { type ResolvedQuestion, resolveQuestion } from './resolveQuestion.ts';
import { seasonBlock } from './seasonBlock.ts';
import { adviceOf, sentenceOf } from './sentence.ts';

/** What an answer needs beside the question. */
export interface AnswerDeps {
  readonly catalogue: Catalogue;
  readonly climates: ClimateCache;
  /** Version of the program, printed with each answer. */
  readonly version: string;
}

export interface AnswerOptions {
  /** Add the curves and rain that charts need. */
  readonly season?: boolean;
}

/**
 * Answers one question: one field, one treatment, one crop, one date.
 *
 * @throws {InvalidInputError} where the question does not fit together; `details.field` names the culprit
 * @throws {MissingDataError} STATION_UNKNOWN, INTERVAL_MISSING, TOO_FEW_YEARS, LATITUDE_MISSING, TEMPERATURES_MISSING
 */
export async function answerField(
  input: QuestionInput,
  deps: AnswerDeps,
  options: AnswerOptions = {},
): Promise<Answer> {
  const resolved = resolveQuestion(readQuestion(questionSchema, input), deps.catalogue);
  const { question, interval, application } = resolved;
  const weather = await deps.climates.of(question);
  const asOfDay = observedThrough(question.asOf, application.appliedDay, weather.climate.series);
  if (interval.lengthDays === 0 || resolved.active?.soilResidual === 'no')
    return answerWithoutCarryover(resolved, weather, deps);

  const odds = seasonOdds(weather.climate, {
    layer: resolved.layer,
    applications: [application],
    plantDay: resolved.plantDay,
    oddsLimit: question.oddsLimit,
    base: { from: question.baseFrom, to: question.baseTo },
    asOfDay,
    outlook: question.outlook && {
      below: question.outlook.belowPercent / 100,
      near: question.outlook.nearPercent / 100,
      above: question.outlook.abovePercent / 100,
      fromDay: question.outlook.from === undefined ? undefined : parseIsoDate(question.outlook.from),
      toDay: question.outlook.to === undefined ? undefined : parseIsoDate(question.outlook.to),
    },
    restOfSeasonRain: question.restOfSeasonRain,
    irrigation: question.irrigation.map(({ date, mm }) => ({ day: parseIsoDate(date), mm })),
    assumptions: question.assume,
  });
  return assemble(resolved, weather, odds, deps, options);
}

/** The last observed day that counts; undefined while planning. */
function observedThrough(
  asOf: string | undefined,
  appliedDay: number,
  series: DailySeries,
): number | undefined {
  if (asOf === undefined) return undefined;
  const asOfDay = parseIsoDate(asOf);
  const lastDay = series.firstDay + series.days - 1;
  if (asOfDay > lastDay || asOfDay < series.firstDay) {
    throw new InvalidInputError(
      'DATE_OUTSIDE_RECORD',
      `The record of ${series.station.id} runs from ${isoDateOf(series.firstDay)} to ${isoDateOf(lastDay)}; nothing is observed on ${asOf}.`,
      {
        hint: `Give an as-of date up to ${isoDateOf(lastDay)}, leave it out to plan from past years alone, or import newer records.`,
        details: { field: 'asOf', firstDate: isoDateOf(series.firstDay), lastDate: isoDateOf(lastDay) },
      },
    );
  }
  return asOfDay < appliedDay ? undefined : asOfDay;
}

function assemble(
  resolved: ResolvedQuestion,
  weather: StationWeather,
  odds: SeasonOdds,
  { version, catalogue }: AnswerDeps,
  { season }: AnswerOptions,
): Answer {
  const dateAt = (offset: number) => isoDateOf(odds.firstDay + offset);
  const dateOrNull = (offset: number | null) =>
    offset === null || !Number.isFinite(offset) ? null : dateAt(Math.ceil(offset));
  const names: readonly ThirdName[] = thirdNames(odds.years.map(({ warmRainMm }) => warmRainMm));
  const spoken = {
    carryoverModelled: true,
    labelDate: dateAt(odds.labelOffset),
    clearDate: dateOrNull(odds.clearOffset),
    oddsAtPlanting: odds.oddsAtPlanting,
    inputs: inputsOf(resolved),
  };
  const said = { ...spoken, notClear: notClearWords(odds) };
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
    years: odds.years.map((year, index) => ({
      year: year.year,
      third: names[index],
      weight: odds.weights[index],
      breakdownDays: year.breakdownDaysAtPlanting,
      probability: year.probabilities[odds.plantOffset],
      clearDate: dateOrNull(year.clearOffset),
      warmRainMm: year.warmRainMm,
    })),
    cautions: cautionsOf(resolved, weather, odds, catalogue),
    model: modelOf(version),
    weather: weatherOf(weather, odds),
    ...(season ? { season: seasonBlock(weather.climate, odds, (index) => names[index]) } : {}),
  };
}

/** An interval of zero, or an active that roots do not take up from soil: no carryover, whatever the load. */
function answerWithoutCarryover(
  resolved: ResolvedQuestion,
  weather: StationWeather,
  { version, catalogue }: AnswerDeps,
): Answer {
  const labelDate = isoDateOf(resolved.application.appliedDay + resolved.interval.lengthDays);
  const spoken = {
    carryoverModelled: false,
    labelDate,
    clearDate: labelDate,
    oddsAtPlanting: null,
    inputs: inputsOf(resolved),
  };
  const said = { ...spoken, notClear: '' };
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
    years: [],
    cautions: cautionsOf(resolved, weather, null, catalogue),
    model: modelOf(version),
    weather: weatherOf(weather, null),
  };
}

const modelOf = (version: string): Answer['model'] => ({ name: 'drywake residual persistence', version });

function inputsOf({
  question,
  active,
  crop,
  interval,
  halfLife,
  texture,
  layer,
}: ResolvedQuestion): Answer['inputs'] {
  return {
    question,
    residual: {
      name: active?.isoName ?? question.residual,
      group: active === null ? null : String(active.group),
      ...halfLife,
    },
    crop: crop?.name ?? question.crop,
    interval,
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

function weatherOf({ record, climate, help }: StationWeather, odds: SeasonOdds | null): Answer['weather'] {
  const { series } = climate;
  const years = odds?.years.map(({ year }) => year) ?? [];
  const countOf = (codes: Uint8Array, matches: (code: number) => boolean) => codes.filter(matches).length;
  const missing = countOf(series.rainOrigin, isRainMissing);
  return {
    station: series.station,
    source: record.source,
    firstDate: isoDateOf(series.firstDay),
    lastDate: isoDateOf(series.firstDay + series.days - 1),
    firstYear: years[0] ?? null,
    lastYear: years.at(-1) ?? null,
    yearsUsed: years.length,
    missingRainPercent: (missing / series.days) * 100,
    help,
    spreadRainDays: countOf(series.rainOrigin, (code) => code === RAIN_SPREAD),
    filledTemperatureDays: countOf(series.tempOrigin, (code) => code !== TEMP_OBSERVED),
    observedThrough: odds && odds.observedDays > 0 ? isoDateOf(odds.firstDay + odds.observedDays - 1) : null,
  };
}
