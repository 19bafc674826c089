import type { JudgedClause } from '../analysis/labelConditions.ts';
import { isoDateOf } from '../calendar.ts';
import { sayInterval } from '../catalogue/intervalLength.ts';
import { GRAMS_PER_HA_PER_OUNCE_PER_ACRE, inchesFromMm } from '../units.ts';
import { sayDate, sayOddsOf } from './words.ts';

/** An amount of water in both systems: "25 mm (1.0 in)". */
export const sayWater = (mm: number): string => `${Math.round(mm)} mm (${inchesFromMm(mm).toFixed(1)} in)`;

/** A rate in both systems: "107 g/ha (1.5 oz/ac)". */
const sayRate = (gramsPerHa: number): string =>
  `${Number(gramsPerHa.toPrecision(3))} g/ha (${Number((gramsPerHa / GRAMS_PER_HA_PER_OUNCE_PER_ACRE).toPrecision(2))} oz/ac)`;

/** What a condition asks for and how it stands, in one or two sentences. */
export function conditionWords(judged: JudgedClause): string {
  const late =
    judged.endsAfterPlanting && judged.state !== 'met' ? ' Its last day comes after this planting date.' : '';
  return `${capital(asked(judged))}: ${standing(judged)}.${late} ${consequence(judged)}`;
}

function asked({ clause, byDay }: JudgedClause): string {
  const by = byDay === null ? '' : ` by ${sayDate(isoDateOf(byDay))}`;
  switch (clause.kind) {
    case 'water': {
      const unread =
        clause.window.to === 'unknown'
          ? ' (the source’s last day could not be read; rain after August counts little and is left out)'
          : '';
      return `at least ${sayWater(clause.minMm)} of ${clause.counts} ${sinceWords(clause.window.from)}${by}${unread}`;
    }
    case 'startingRain':
      return `the interval begins once ${sayWater(clause.minMm)} of rain have fallen${
        clause.onDrySoilOnly ? ' (after a spray on dry soil, which is taken to be so)' : ''
      }${byDay === null ? '' : `, for this planting date${by}`}`;
    case 'stormGuard':
      return `at least ${sayWater(clause.minMm)} of rain${by}, so that a few late storms alone do not count`;
    case 'annualRain':
      return `at least ${sayWater(clause.minMm)} of ${clause.counts} in a mean year`;
    case 'soilPh': {
      const { atLeast, below } = clause;
      return `soil pH ${
        atLeast === undefined
          ? `below ${below}`
          : below === undefined
            ? `of ${atLeast} or more`
            : `from ${atLeast} to under ${below}`
      }`;
    }
    case 'organicMatter':
      return `organic matter of at least ${clause.minPercent} %`;
    case 'tillage':
      return 'tillage before planting';
    case 'zone':
      return `place or practice: ${clause.words}`;
    case 'rate': {
      const { fromGramsPerHa: from, toGramsPerHa: to } = clause;
      return `a rate ${
        to === undefined
          ? `of ${sayRate(from ?? 0)} or more`
          : from === undefined
            ? `up to ${sayRate(to)}`
            : `from ${sayRate(from)} to ${sayRate(to)}`
      } of active ingredient`;
    }
    case 'bioassay':
      return clause.role === 'required'
        ? 'a clean field bioassay before planting'
        : 'a clean field bioassay may stand in for the other conditions';
  }
}

const sinceWords = (from: string): string =>
  from === 'application' ? 'from the application on' : `from ${sayDate(`2001-${from}`).split(',')[0]} on`;

const FACT_WANTED: Partial<Record<JudgedClause['clause']['kind'], string>> = {
  soilPh: 'the soil’s pH is not given',
  organicMatter: 'the soil’s organic matter is not given (2 % is only what is taken where nothing is said)',
  rate: 'the rate of active ingredient is not given',
  bioassay: 'no bioassay is told',
  annualRain: 'no year of the record is whole enough to tell',
  tillage: 'only you can tell',
  zone: 'only you can tell',
};

function standing({ clause, state, amountMm, odds, fieldValue }: JudgedClause): string {
  if (clause.kind === 'annualRain' && amountMm !== null) {
    return `${state}, with ${sayWater(amountMm)} a year in the record`;
  }
  const fact = FACT_WANTED[clause.kind];
  if (fact !== undefined) {
    return state === 'open' ? `open, for ${fact}` : `${state}${valueWords(clause.kind, fieldValue)}`;
  }
  const soFar = amountMm === null ? '' : `, ${sayWater(amountMm)} so far`;
  if (state !== 'open') return `${state}${amountMm === null ? '' : `, with ${sayWater(amountMm)}`}`;
  return odds === null
    ? `open${soFar}; too few usable years to give odds`
    : `open${soFar}; met in ${sayOddsOf(odds, 'seasons like this')}`;
}

function valueWords(kind: JudgedClause['clause']['kind'], value: number | null): string {
  if (value === null) return '';
  if (kind === 'soilPh') return `, with pH ${value}`;
  return kind === 'rate' ? `, with ${sayRate(value)}` : `, with ${value} %`;
}

function consequence({ clause, state, intervalIfMet, intervalIfNot, waitsForever }: JudgedClause): string {
  if (clause.kind === 'bioassay' && clause.role === 'alternative') return 'None is required for that alone.';
  if (clause.grants === 'short end') {
    const otherwise = intervalIfNot === null ? '' : `; otherwise ${sayInterval(intervalIfNot)}`;
    return `Asked for the shorter interval of ${sayInterval(intervalIfMet)}, which is told and not taken${otherwise}.`;
  }
  const met = `Met, the label gives ${sayInterval(intervalIfMet)}`;
  if (intervalIfNot !== null) return `${met}; otherwise ${sayInterval(intervalIfNot)}.`;
  if (clause.ifNot === 'bioassay') return `${met}; otherwise a field bioassay decides.`;
  if (clause.ifNot === 'not stated')
    return `${met}; the source does not say how much longer it is otherwise: read your label.`;
  if (waitsForever && state !== 'met')
    return `${met}; until then the crop may not be sown, and no date within 3 years is sure enough.`;
  return `${met}; until then the crop may not be sown.`;
}

const capital = (text: string): string => text[0].toUpperCase() + text.slice(1);
