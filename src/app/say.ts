/** Amounts and dates in sentences, in the units and the style of dates that are asked for. */
import { type DateStyle, type DateWords, datesIn } from '../dateWords.ts';
import type { Wording } from '../schema/wording.ts';
import { acresFromHectares, inchesFromMm, METRES_PER_FOOT, ouncesPerAcreFromGramsPerHa } from '../units.ts';

/** A way to say amounts and dates. */
export interface Say {
  readonly wording: Required<Wording>;
  readonly dates: DateWords;
  /** Water of a condition or a sum, to a tenth of an inch or a millimetre: "1.0 in", "25 mm". */
  water(mm: number): string;
  /** A rate of active ingredient: "1.5 oz/ac", "107 g/ha". */
  rate(gramsPerHa: number): string;
  /** Words that hold rates in g/ha: "35-140" becomes "0.5-2 oz/ac". */
  ratesIn(words: string): string;
  /** The size of a field: "160 acres", "64.7 ha". */
  area(areaHa: number): string;
  /** A way over land: "12 miles", "20 km". */
  distance(km: number): string;
  /** A difference of heights: "328 ft", "100 m". */
  height(metres: number): string;
  /** A difference of temperatures: "1.2 °F", "0.7 °C". */
  degrees(celsius: number): string;
}

/** Dates that go with units where none are asked for. */
const datesWith = (units: 'us' | 'metric'): DateStyle => (units === 'us' ? 'us' : 'iso');

const KM_PER_MILE = 1.609344;

/**
 * The way to say amounts and dates.
 * @example sayIn({ units: 'metric' }).water(25.4) // '25 mm'
 */
export function sayIn({ units = 'us', dates = datesWith(units) }: Wording = {}): Say {
  const says = units === 'us' ? US : METRIC;
  return {
    wording: { units, dates },
    dates: datesIn(dates),
    ratesIn: (words) => ratesIn(words, says),
    ...says,
  };
}

const NUMBER = /\d+(?:\.\d+)?/g;

/** Each number as a rate, the unit after the last. */
function ratesIn(words: string, { rate }: Amounts): string {
  let left = words.match(NUMBER)?.length ?? 0;
  return words.replace(NUMBER, (grams) => {
    const said = rate(Number(grams));
    left -= 1;
    return left > 0 ? said.split(' ')[0] : said;
  });
}

type Amounts = Omit<Say, 'wording' | 'dates' | 'ratesIn'>;

const US: Amounts = {
  water: (mm) => `${inchesFromMm(mm).toFixed(1)} in`,
  rate: (gramsPerHa) => `${Number(ouncesPerAcreFromGramsPerHa(gramsPerHa).toPrecision(2))} oz/ac`,
  area: (areaHa) => `${Number(acresFromHectares(areaHa).toFixed(1))} acres`,
  distance: (km) => `${Math.round(km / KM_PER_MILE)} miles`,
  height: (metres) => `${Math.round(metres / METRES_PER_FOOT)} ft`,
  degrees: (celsius) => `${(celsius * 1.8).toFixed(1)} °F`,
};

const METRIC: Amounts = {
  water: (mm) => `${Math.round(mm)} mm`,
  rate: (gramsPerHa) => `${Number(gramsPerHa.toPrecision(3))} g/ha`,
  area: (areaHa) => `${Number(areaHa.toFixed(1))} ha`,
  distance: (km) => `${Math.round(km)} km`,
  height: (metres) => `${Math.round(metres)} m`,
  degrees: (celsius) => `${celsius.toFixed(1)} °C`,
};

/** What stands for itself whatever is asked for: names by which things are told apart. */
export const NEUTRAL: Say = sayIn({ units: 'metric', dates: 'iso' });
