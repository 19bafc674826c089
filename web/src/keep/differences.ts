import { blankName } from '../../../src/schema/fieldNames.ts';
import type { DateWords } from '../units/dates.ts';
import { areaUnit, doseUnit, type Quantity, rainUnit, shownNumber, type Units } from '../units/units.ts';
import { sameRecord } from './sameRecord.ts';

/** One part of a record in which two versions differ, in words. */
export interface Difference {
  readonly part: string;
  readonly mine: string;
  readonly theirs: string;
}

/** How the reader wants amounts and dates; a text that is no date is given back as it is. */
export interface ReaderStyle {
  readonly units: Units;
  readonly dates: Pick<DateWords, 'full'>;
}

const percent = () => '%';

/** Numbers with a unit, by key: their kind and the unit’s name. */
const AMOUNTS: Readonly<Record<string, readonly [Quantity, (units: Units) => string]>> = {
  areaHa: ['area', areaUnit],
  mm: ['rain', rainUnit],
  minMm: ['rain', rainUnit],
  depthCm: ['depth', (units) => (units === 'us' ? 'in' : 'cm')],
  rateGramsPerHa: ['rate', doseUnit],
  fromGramsPerHa: ['rate', doseUnit],
  toGramsPerHa: ['rate', doseUnit],
  rateFraction: ['fraction', percent],
  canopyFraction: ['fraction', percent],
  coverFraction: ['fraction', percent],
  fractionLeft: ['fraction', percent],
  sandPercent: ['plain', percent],
  clayPercent: ['plain', percent],
  organicMatterPercent: ['plain', percent],
  minPercent: ['plain', percent],
  injuredPercent: ['plain', percent],
  halfLifeDays: ['plain', () => 'days'],
  oddsLimit: ['twentieths', () => 'in 20'],
};

/**
 * Where two versions of a record differ, part by part; of lists only the entries that differ.
 * @param names words for the parts
 */
export function differences(
  mine: object,
  theirs: object,
  names: Readonly<Record<string, string>>,
  style: ReaderStyle,
): Difference[] {
  const say = (key: string) => (value: unknown) => sayValue(key, value, style);
  const keys = [...new Set([...Object.keys(mine), ...Object.keys(theirs)])];
  return keys.flatMap((key) => {
    const [a, b] = [mine, theirs].map((record) => (record as Record<string, unknown>)[key]);
    if (sameRecord(a ?? null, b ?? null)) return [];
    const part = names[key] ?? key;
    if (!Array.isArray(a) || !Array.isArray(b)) return [{ part, mine: say(key)(a), theirs: say(key)(b) }];
    return [{ part, mine: sayOwn(a, b, say(key)), theirs: sayOwn(b, a, say(key)) }];
  });
}

/** The entries of a list that another lacks. */
function sayOwn(
  list: readonly unknown[],
  other: readonly unknown[],
  say: (value: unknown) => string,
): string {
  const own = list.filter((entry) => !other.some((there) => sameRecord(entry, there)));
  return own.length === 0 ? 'nothing of its own' : own.map(say).join('; ');
}

function sayValue(key: string, value: unknown, style: ReaderStyle): string {
  if (isNothing(value)) return 'nothing';
  if (Array.isArray(value)) return value.map((entry) => sayValue(key, entry, style)).join(', ');
  if (typeof value === 'number') return sayNumber(key, value, style.units);
  if (typeof value === 'string') return style.dates.full(value);
  if (typeof value !== 'object' || value === null) return `${value}`;
  return Object.entries(value)
    .filter(([inner, part]) => inner !== 'id' && !isNothing(part))
    .map(([inner, part]) => {
      const said = sayValue(inner, part, style);
      return typeof part === 'string' || typeof part === 'number' ? said : `${blankName(inner)}: ${said}`;
    })
    .join(', ');
}

function sayNumber(key: string, value: number, units: Units): string {
  const amount = AMOUNTS[key];
  if (amount === undefined) return `${value}`;
  const [quantity, unit] = amount;
  return `${shownNumber(value, quantity, units)} ${unit(units)}`;
}

const isNothing = (value: unknown): boolean =>
  value === undefined || value === null || value === '' || (Array.isArray(value) && value.length === 0);
