import { civilDateOf, dayNumberOf, daysInMonth, parseIsoDate } from '../calendar.ts';
import { gammaFromMoments } from '../model/generator/gammaFromMoments.ts';
import { wetDayTransitions } from '../model/generator/wetDayTransitions.ts';
import { ABSENT } from '../schema/codes.ts';
import type { Station, StationRecord } from '../schema/weather.ts';
import { MONTHLY_RAIN, TEMPERATURE, WET_DAY_MM, WET_DAY_VARIATION, WETNESS } from './inventedClimate.ts';
import { createRandomSource, type RandomSource } from './randomSource.ts';

/** The place that does not exist. It has a latitude because day length needs one, and no longitude. */
export const DEMO_STATION: Station = {
  id: 'demo-invented',
  name: 'Larkrise (invented)',
  latitudeDeg: 47.2,
  longitudeDeg: null,
  elevationM: 1100,
  invented: true,
};

/** First and last day of the record: 60 whole years, October to September. */
export const DEMO_FIRST_DATE = '1966-10-01';
export const DEMO_LAST_DATE = '2026-09-30';

/**
 * The smallest seed from 1 up whose 60 years have a mean of 370-400 mm and a coefficient of variation of
 * 0.235-0.265, and whose June-September and July-September of 2026 both bring 50-65 % of their own 60-year
 * mean: a dry late summer is what the demo is about. The rule speaks of weather only, but its limits were set
 * after scans of seeds that showed the demo's odds beside the weather. A test repeats the search.
 */
export const DEMO_SEED = 3;

/**
 * The demo's daily record: rain and temperatures of an invented place over 60 years.
 *
 * Equation   wet or dry: two-state Markov chain, first order, by month; amount of a wet day: 0.3 mm plus
 *            gamma; share of wet days and mean amount times e^(w/2) each, w = wetness of year and spell;
 *            temperature: cosine of the year plus a first-order autoregressive swing, wet days cooler
 * Symbols    seed = any integer of 32 bits
 * Valid      a demo only: no real place has this climate, see inventedClimate.ts
 * Source     Water Resources Research 17, 182-190 (1981) for chain and gamma; all parameters are our own
 * Checked    test/demo/inventedRecord.test.ts
 * @example   inventedRecord().rainTenthsMm.length // 21915
 */
export function inventedRecord(seed: number = DEMO_SEED): StationRecord {
  const calendar = recordCalendar();
  const random = createRandomSource(seed);
  const rainTenthsMm = rainColumn(random, calendar);
  const { maxTempTenthsC, minTempTenthsC } = temperatureColumns(random, calendar, rainTenthsMm);
  const days = rainTenthsMm.length;
  return {
    station: DEMO_STATION,
    firstDay: parseIsoDate(DEMO_FIRST_DATE),
    rainTenthsMm,
    maxTempTenthsC,
    minTempTenthsC,
    multiDayRainTenthsMm: new Int32Array(days).fill(ABSENT),
    multiDayCount: new Int32Array(days).fill(ABSENT),
    reading: {
      valuesRead: 3 * days,
      droppedByFlag: 0,
      implausible: 0,
      presumedZero: 0,
      duplicated: 0,
      ignoredElements: 0,
      notes: [],
    },
    source: 'invented',
  };
}

/** Months count from 0 in the calendar below; the record's years begin here. */
const OCTOBER = 9;

/** Month (0-11) and day of the year (0-365) of every day of the record. */
interface RecordCalendar {
  readonly months: Uint8Array;
  readonly yearDays: Uint16Array;
}

function recordCalendar(): RecordCalendar {
  const days = parseIsoDate(DEMO_LAST_DATE) - parseIsoDate(DEMO_FIRST_DATE) + 1;
  const months = new Uint8Array(days);
  const yearDays = new Uint16Array(days);
  let { year, month } = civilDateOf(parseIsoDate(DEMO_FIRST_DATE));
  for (let i = 0; i < days; ) {
    const firstYearDay = dayNumberOf(year, month, 1) - dayNumberOf(year, 1, 1);
    const length = daysInMonth(year, month);
    for (let day = 0; day < length; day++, i++) {
      months[i] = month - 1;
      yearDays[i] = firstYearDay + day;
    }
    if (++month > 12) {
      month = 1;
      year++;
    }
  }
  return { months, yearDays };
}

/**
 * Factor of the wetness on chance and on amount of rain, each; one value per step of {@link WETNESS} [-].
 * A year's own wetness sets in with the first step that begins in it.
 */
function wetnessFactors(random: RandomSource, { months }: RecordCalendar): Float64Array {
  const { yearlySd, spellSd, spellDays, spellStepDays } = WETNESS;
  const spellMemory = Math.exp(-spellStepDays / spellDays);
  const spellShock = spellSd * Math.sqrt(1 - spellMemory * spellMemory);
  // A log-normal factor of spread s has mean e^(s²/2); this takes it back out.
  const centre = (yearlySd ** 2 + spellSd ** 2) / 2;
  const factors = new Float64Array(Math.ceil(months.length / spellStepDays));
  let yearly = yearlySd * random.normal();
  let spell = spellSd * random.normal();
  let monthBefore = OCTOBER;
  for (let step = 0; step < factors.length; step++) {
    const month = months[step * spellStepDays];
    if (month === OCTOBER && monthBefore !== OCTOBER) yearly = yearlySd * random.normal();
    monthBefore = month;
    spell = spellMemory * spell + spellShock * random.normal();
    factors[step] = Math.exp((yearly + spell - centre) / 2);
  }
  return factors;
}

/** Daily rain [0.1 mm]. */
function rainColumn(random: RandomSource, calendar: RecordCalendar): Int32Array {
  const { months } = calendar;
  const factors = wetnessFactors(random, calendar);
  const rainTenthsMm = new Int32Array(months.length);
  let chances = wetDayTransitions(0);
  let meanMm = 0;
  let wet = false;
  for (let i = 0; i < months.length; i++) {
    const newStep = i % WETNESS.spellStepDays === 0;
    if (newStep || months[i] !== months[i - 1]) {
      const factor = factors[Math.floor(i / WETNESS.spellStepDays)];
      const { wetDayShare, wetDayMeanMm } = MONTHLY_RAIN[months[i]];
      chances = wetDayTransitions(Math.min(1, wetDayShare * factor));
      meanMm = wetDayMeanMm * factor;
    }
    wet = random.uniform() < (wet ? chances.wetAfterWet : chances.wetAfterDry);
    if (wet) rainTenthsMm[i] = wetDayTenths(random, meanMm);
  }
  return rainTenthsMm;
}

/** Rain of one wet day of the given mean [0.1 mm]. */
function wetDayTenths(random: RandomSource, meanMm: number): number {
  const aboveMm = Math.max(WET_DAY_MM, meanMm - WET_DAY_MM);
  const { shape, scaleMm } = gammaFromMoments(aboveMm, WET_DAY_VARIATION * aboveMm);
  return Math.round(10 * (WET_DAY_MM + random.gamma(shape, scaleMm)));
}

/** What is normal for a day of the year; one array per quantity, indexed 0-365. */
interface DailyNormals {
  /** Mean temperature [°C]. */
  readonly meanC: Float64Array;
  /** Maximum less minimum [°C]. */
  readonly rangeC: Float64Array;
  /** Standard deviation of the swing about the mean [°C]. */
  readonly swingC: Float64Array;
  /** What rain takes from the mean and from the range [°C]. */
  readonly wetMeanDropC: Float64Array;
  readonly wetRangeDropC: Float64Array;
}

function dailyNormals(): DailyNormals {
  const t = TEMPERATURE;
  const table = (valueAt: (season: number, summer: number) => number) =>
    Float64Array.from({ length: 366 }, (_, yearDay) => {
      const season = Math.cos((2 * Math.PI * (yearDay - t.warmestYearDay)) / 365.25);
      return valueAt(season, (1 + season) / 2);
    });
  const maxDropC = (summer: number) =>
    t.wetMaxDropWinterC + (t.wetMaxDropSummerC - t.wetMaxDropWinterC) * summer;
  return {
    meanC: table((season) => t.yearMeanC + t.halfSwingC * season),
    rangeC: table((season) => t.rangeMeanC + t.rangeHalfSwingC * season),
    swingC: table((_, summer) => t.swingWinterC + (t.swingSummerC - t.swingWinterC) * summer),
    wetMeanDropC: table((_, summer) => (maxDropC(summer) - t.wetMinRiseC) / 2),
    wetRangeDropC: table((_, summer) => maxDropC(summer) + t.wetMinRiseC),
  };
}

/** Daily maximum and minimum air temperature [0.1 °C]. */
function temperatureColumns(
  random: RandomSource,
  { months, yearDays }: RecordCalendar,
  rainTenthsMm: Int32Array,
): Pick<StationRecord, 'maxTempTenthsC' | 'minTempTenthsC'> {
  const { swingMemory, rangeSpanC, leastRangeC } = TEMPERATURE;
  const { meanC, rangeC, swingC, wetMeanDropC, wetRangeDropC } = dailyNormals();
  const wetDayShares = Float64Array.from(MONTHLY_RAIN, ({ wetDayShare }) => wetDayShare);
  // Even shocks of variance 1 − memory²; summed over the days that are remembered they come close to a normal.
  const shockSpan = Math.sqrt(12 * (1 - swingMemory * swingMemory));
  const days = months.length;
  const maxTempTenthsC = new Int32Array(days);
  const minTempTenthsC = new Int32Array(days);
  let swing = random.normal();
  for (let i = 0; i < days; i++) {
    const at = yearDays[i];
    swing = swingMemory * swing + shockSpan * (random.uniform() - 0.5);
    // Rain shifts a day against its month's normal, so dry days are warmer and the month keeps its mean.
    const wetness = (rainTenthsMm[i] > 0 ? 1 : 0) - wetDayShares[months[i]];
    const mean = meanC[at] + swing * swingC[at] - wetness * wetMeanDropC[at];
    const range = rangeC[at] - wetness * wetRangeDropC[at] + rangeSpanC * (random.uniform() - 0.5);
    const halfRange = Math.max(leastRangeC, range) / 2;
    maxTempTenthsC[i] = Math.round(10 * (mean + halfRange));
    minTempTenthsC[i] = Math.round(10 * (mean - halfRange));
  }
  return { maxTempTenthsC, minTempTenthsC };
}
