import { z } from 'zod';
import {
  arrheniusResponse,
  brierParts,
  brierScore,
  brierSkill,
  canopyInterceptionFromLai,
  clearSkyRadiation,
  climateQuantile,
  daylightHours,
  dayOfYear,
  effectiveHalfLife,
  effectiveYears,
  extraterrestrialRadiation,
  foliageFractionLeft,
  fractionLeft,
  gammaFromMoments,
  gammaFromWetDayMean,
  hargreavesEt0,
  INTERCEPTION_CROPS,
  interceptionByStage,
  inverseRelativeDistance,
  jeffreysInterval,
  longRunWetShare,
  meanSpells,
  mmFromInches,
  moistureResponse,
  monthlyMeanStands,
  monthlyTotalStands,
  normalRatioAmount,
  normalStands,
  outlookWeights,
  phFactor,
  plottingPosition,
  soilConcentration,
  soilWaterCharacteristics,
  solarDeclination,
  sunsetHourAngle,
  temperatureResponse,
  totalEvaporableWater,
  walkerMoistureResponse,
  washOffFraction,
  weightedMean,
  wetDayTransitions,
  wilsonInterval,
} from '../../src/index.ts';
import { topLayerDays } from './topLayerDays.ts';

type Outputs = Record<string, number | number[]>;

/** From the inputs of a case, as they stand in the file, to the quantities it names. */
export type Adapter = (inputs: unknown) => Outputs;

/** Checks the inputs against `shape`, an unknown name being an error, then computes. */
const adapter =
  <Shape extends z.ZodRawShape>(
    shape: Shape,
    compute: (inputs: z.output<z.ZodObject<Shape>>) => Outputs,
  ): Adapter =>
  (inputs) =>
    compute(z.strictObject(shape).parse(inputs) as z.output<z.ZodObject<Shape>>);

const number = z.number();
const series = z.array(number);
const optional = number.optional();

/** Every equation that a case file may name. */
export const REGISTRY: Readonly<Record<string, Adapter>> = {
  solarDay: adapter(
    { latitudeDeg: number, dayOfYear: number, elevationM: number.default(0) },
    ({ latitudeDeg, dayOfYear: day, elevationM }) => {
      const declinationRad = solarDeclination(day);
      const sunsetHourAngleRad = sunsetHourAngle((latitudeDeg * Math.PI) / 180, declinationRad);
      const extraterrestrialMj = extraterrestrialRadiation(latitudeDeg, day);
      return {
        inverseRelativeDistance: inverseRelativeDistance(day),
        declinationRad,
        sunsetHourAngleRad,
        extraterrestrialMj,
        daylightHours: daylightHours(sunsetHourAngleRad),
        clearSkyMj: clearSkyRadiation(extraterrestrialMj, elevationM),
      };
    },
  ),
  brier: adapter({ probabilities: series, outcomes: series }, ({ probabilities, outcomes }) => {
    const score = brierScore(probabilities, outcomes);
    const baseRate = outcomes.reduce((sum, one) => sum + one, 0) / outcomes.length;
    return { score, skill: brierSkill(score, baseRate) ?? Number.NaN };
  }),
  brierParts: adapter(
    { forecasts: series, observed: series, weights: series, baseRate: number },
    ({ forecasts, observed, weights, baseRate }) => {
      const bins = forecasts.map((forecast, i) => ({ forecast, observed: observed[i], weight: weights[i] }));
      const { reliability, resolution, uncertainty } = brierParts(bins, baseRate);
      const score = reliability - resolution + uncertainty;
      const skill = brierSkill(score, baseRate) ?? Number.NaN;
      return { reliability, resolution, uncertainty, score, skill };
    },
  ),
  midMonthRadiation: adapter({ latitudeDeg: number }, ({ latitudeDeg }) => ({
    januaryToDecemberMj: Array.from({ length: 12 }, (_, month) =>
      extraterrestrialRadiation(latitudeDeg, dayOfYear(2021, month + 1, 15)),
    ),
  })),
  dayOfYear: adapter({ year: number, month: number, day: number }, ({ year, month, day }) => ({
    dayOfYear: dayOfYear(year, month, day),
  })),
  hargreavesEt0: adapter({ maxTempC: number, minTempC: number, extraterrestrialMj: number }, (i) => ({
    et0Mm: hargreavesEt0(i.maxTempC, i.minTempC, i.extraterrestrialMj),
  })),
  topLayerDays: adapter(
    {
      tewMm: optional,
      thetaFieldCapacity: optional,
      thetaWiltingPoint: optional,
      layerDepthM: optional,
      rewMm: number,
      kcMax: number,
      startDepletionMm: number,
      days: z.array(
        z.strictObject({
          et0Mm: number,
          kcb: number,
          rainMm: optional,
          irrigationMm: optional,
          uncoveredFraction: optional,
          wettedFraction: optional,
        }),
      ),
    },
    (i) => {
      const tewMm =
        i.tewMm ??
        totalEvaporableWater(
          i.thetaFieldCapacity ?? Number.NaN,
          i.thetaWiltingPoint ?? Number.NaN,
          i.layerDepthM ?? Number.NaN,
        );
      const { rewMm, kcMax, startDepletionMm } = i;
      return { tewMm, ...topLayerDays(i.days, { tewMm, rewMm, kcMax, startDepletionMm }) };
    },
  ),
  soilWaterCharacteristics: adapter({ sand: number, clay: number, organicMatterPercent: number }, (soil) => {
    const water = soilWaterCharacteristics(soil);
    return {
      wiltingPointPercent: 100 * water.thetaWiltingPoint,
      fieldCapacityPercent: 100 * water.thetaFieldCapacity,
      saturationPercent: 100 * water.thetaSaturation,
      saturatedConductivityMmPerHour: water.saturatedConductivityMmPerHour,
      bulkDensity: water.bulkDensity,
    };
  }),
  temperatureResponse: adapter({ soilTempsC: series, q10: number }, ({ soilTempsC, q10 }) => ({
    response: soilTempsC.map((t) => temperatureResponse(t, q10)),
  })),
  arrheniusResponse: adapter({ soilTempsC: series, activationEnergyKjPerMol: number }, (i) => ({
    response: i.soilTempsC.map((t) => arrheniusResponse(t, i.activationEnergyKjPerMol)),
  })),
  // Without an exponent: the default of the function is part of what is checked.
  walkerMoistureResponse: adapter({ theta: series, thetaReference: number }, ({ theta, thetaReference }) => ({
    response: theta.map((t) => walkerMoistureResponse(t, thetaReference)),
  })),
  moistureResponse: adapter({ relativeWetness: series, exponentB: number }, (i) => ({
    response: i.relativeWetness.map((r) => moistureResponse(r, i.exponentB)),
  })),
  normalisationFactor: adapter(
    {
      soilTempC: number,
      q10: number,
      theta: number.default(1),
      thetaReference: number.default(1),
      exponent: optional,
    },
    (i) => ({
      factor:
        temperatureResponse(i.soilTempC, i.q10) *
        walkerMoistureResponse(i.theta, i.thetaReference, i.exponent),
    }),
  ),
  phFactor: adapter(
    {
      halfLifeDays: number,
      factorPerUnit: number,
      referencePh: number,
      lowPh: number,
      highPh: number,
      soilPh: series,
    },
    ({ halfLifeDays, soilPh, ...slope }) => {
      const told = { words: '-', caution: '-', mark: 'computed' as const, sources: [] };
      return {
        halfLifeDays: soilPh.map((ph) => halfLifeDays * phFactor({ kind: 'slope', ...slope, ...told }, ph)),
      };
    },
  ),
  breakdownDays: adapter(
    {
      halfLifeDays: number,
      q10: number,
      exponent: number,
      days: z.array(z.strictObject({ soilTempC: number, relativeMoisture: number })),
    },
    (i) => {
      const dailyFactor = i.days.map(
        (d) =>
          temperatureResponse(d.soilTempC, i.q10) * walkerMoistureResponse(d.relativeMoisture, 1, i.exponent),
      );
      const breakdownDays = dailyFactor.reduce((sum, factor) => sum + factor, 0);
      return { dailyFactor, breakdownDays, fractionLeft: fractionLeft(breakdownDays, i.halfLifeDays) };
    },
  ),
  steadyBreakdown: adapter(
    {
      halfLifeDays: number,
      soilTempC: number,
      q10: number,
      relativeMoisture: number,
      exponent: number,
      calendarDays: number,
    },
    (i) => {
      const fT = temperatureResponse(i.soilTempC, i.q10);
      const fW = walkerMoistureResponse(i.relativeMoisture, 1, i.exponent);
      return {
        effectiveHalfLifeDays: effectiveHalfLife(i.halfLifeDays, fT, fW),
        fractionLeft: fractionLeft(i.calendarDays * fT * fW, i.halfLifeDays),
      };
    },
  ),
  canopyInterceptionFromLai: adapter({ extinction: number, leafAreaIndex: series }, (i) => ({
    interceptedFraction: i.leafAreaIndex.map((lai) => canopyInterceptionFromLai(i.extinction, lai)),
  })),
  interceptionByStage: adapter(
    {
      crop: z.enum(INTERCEPTION_CROPS),
      growthStagesBbch: series,
      phase: z.literal('established turf').optional(),
    },
    ({ crop, growthStagesBbch, phase }) => ({
      interceptedFraction: growthStagesBbch.map((stage) => interceptionByStage(crop, stage, phase)),
    }),
  ),
  foliageFractionLeft: adapter({ days: series, halfLifeDays: number }, ({ days, halfLifeDays }) => ({
    fractionLeft: days.map((d) => foliageFractionLeft(d, halfLifeDays)),
  })),
  washOffFraction: adapter({ rainMm: series, coefficientPerMm: number }, ({ rainMm, coefficientPerMm }) => ({
    washedOffFraction: rainMm.map((rain) => washOffFraction(rain, coefficientPerMm)),
  })),
  soilConcentration: adapter({ doseGramsPerHa: number, depthCm: number, bulkDensity: number }, (i) => ({
    mgPerKg: soilConcentration(i.doseGramsPerHa, i.depthCm, i.bulkDensity),
  })),
  wilsonInterval: adapter({ events: number, n: number }, ({ events, n }) => ({
    ...wilsonInterval(events, n),
  })),
  jeffreysInterval: adapter({ events: number, n: number }, ({ events, n }) => ({
    ...jeffreysInterval(events, n),
  })),
  outlookOdds: adapter(
    {
      seasonValues: series,
      events: series,
      chances: z.strictObject({ below: number, near: number, above: number }),
    },
    ({ seasonValues, events, chances }) => {
      const weights = outlookWeights(seasonValues, chances);
      const equal = outlookWeights(seasonValues, { below: 1 / 3, near: 1 / 3, above: 1 / 3 });
      return {
        weightedOdds: weightedMean(events, weights),
        unweightedOdds: weightedMean(events, equal),
        effectiveYears: effectiveYears(weights),
      };
    },
  ),
  monthCompleteness: adapter(
    { days: number, missing: series, covered: series.default([]) },
    ({ days, missing, covered }) => {
      const each = (holds: (day: number) => boolean) =>
        Array.from({ length: days }, (_, index) => holds(index + 1));
      const present = each((day) => !missing.includes(day));
      return {
        meanStands: Number(monthlyMeanStands(present)),
        totalStands: Number(
          monthlyTotalStands(
            present,
            each((day) => covered.includes(day)),
          ),
        ),
      };
    },
  ),
  normalCompleteness: adapter({ validYears: number, years: number }, ({ validYears, years }) => ({
    stands: Number(normalStands(validYears, years)),
  })),
  normalRatioAmount: adapter(
    { gaugeNormal: number, normals: series, amounts: series },
    ({ gaugeNormal, normals, amounts }) => ({
      amount: normalRatioAmount(
        normals.map((normal, index) => ({ gaugeNormal, normal, amount: amounts[index] })),
      ),
    }),
  ),
  plottingPosition: adapter({ n: number, ranks: series }, ({ n, ranks }) => ({
    nonExceedance: ranks.map((rank) => plottingPosition(rank, n)),
  })),
  climateQuantile: adapter({ n: number, shares: series }, ({ n, shares }) => ({
    limits: shares.map((share) =>
      climateQuantile(
        Array.from({ length: n }, (_, index) => index + 1),
        share,
      ),
    ),
  })),
  wetDayShortcut: adapter({ wetDayShare: number, meanWetDayMm: number }, ({ wetDayShare, meanWetDayMm }) => {
    const { wetAfterWet, wetAfterDry } = wetDayTransitions(wetDayShare);
    return {
      wetAfterDry,
      wetAfterWet,
      ...gammaFromWetDayMean(meanWetDayMm),
      longRunWetShare: longRunWetShare(wetAfterWet, wetAfterDry),
    };
  }),
  wetDayMonth: adapter(
    { wetAfterWet: number, wetAfterDry: number, meanInches: number, sdInches: number, daysInMonth: number },
    (i) => {
      const share = longRunWetShare(i.wetAfterWet, i.wetAfterDry);
      const spells = meanSpells(i.wetAfterWet, i.wetAfterDry);
      const wetDays = share * i.daysInMonth;
      return {
        longRunWetShare: share,
        wetDays,
        totalMm: wetDays * mmFromInches(i.meanInches),
        ...gammaFromMoments(mmFromInches(i.meanInches), mmFromInches(i.sdInches)),
        wetSpellDays: spells.wetDays,
        drySpellDays: spells.dryDays,
      };
    },
  ),
};
