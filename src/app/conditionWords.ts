import type { JudgedClause } from '../analysis/labelConditions.ts';
import { isoDateOf } from '../calendar.ts';
import { sayInterval } from '../catalogue/intervalLength.ts';
import type { Interval } from '../model/calendar/interval.ts';
import { NEUTRAL, type Say } from './say.ts';
import { sayOddsOf } from './words.ts';

/**
 * What a condition asks for and how it stands, in one or two sentences.
 * @param alsoIfMet intervals of other lines of the label that the same condition holds for
 */
export function conditionWords(judged: JudgedClause, say: Say, alsoIfMet: readonly Interval[] = []): string {
  const late =
    judged.endsAfterPlanting && judged.state !== 'met' ? ' Its last day comes after this planting date.' : '';
  return `${capital(asked(judged, say))}: ${standing(judged, say)}.${late} ${consequence(judged, alsoIfMet)}`;
}

/** What a condition asks for, in the same words whatever units and dates are asked for. */
export const conditionName = (judged: JudgedClause): string => capital(asked(judged, NEUTRAL));

function asked({ clause, byDay }: JudgedClause, say: Say): string {
  const by = byDay === null ? '' : ` by ${say.dates.full(isoDateOf(byDay))}`;
  switch (clause.kind) {
    case 'water': {
      const unread =
        clause.window.to === 'unknown'
          ? ' (the source’s last day could not be read; rain after August counts little and is left out)'
          : '';
      return `at least ${say.water(clause.minMm)} of ${clause.counts} ${sinceWords(clause.window.from, say)}${by}${unread}`;
    }
    case 'startingRain':
      return `the interval begins once ${say.water(clause.minMm)} of rain have fallen${
        clause.onDrySoilOnly ? ' (after a spray on dry soil, which is taken to be so)' : ''
      }${byDay === null ? '' : `, for this planting date${by}`}`;
    case 'stormGuard':
      return `at least ${say.water(clause.minMm)} of rain${by}, so that a few late storms alone do not count`;
    case 'annualRain':
      return `at least ${say.water(clause.minMm)} of ${clause.counts} in a mean year`;
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
    case 'soilTexture':
      return `${clause.groups.join(' or ')} soil`;
    case 'tillage':
      return 'tillage before planting';
    case 'zone':
      return `place or practice: ${clause.words}`;
    case 'rate': {
      const { fromGramsPerHa: from, toGramsPerHa: to } = clause;
      return `a rate ${
        to === undefined
          ? `of ${say.rate(from ?? 0)} or more`
          : from === undefined
            ? `up to ${say.rate(to)}`
            : `from ${say.rate(from)} to ${say.rate(to)}`
      } of active ingredient`;
    }
    case 'bioassay':
      return clause.role === 'required'
        ? 'a clean field bioassay before planting'
        : 'a clean field bioassay may stand in for the other conditions';
  }
}

const sinceWords = (from: string, { dates }: Say): string =>
  from === 'application' ? 'from the application on' : `from ${dates.everyYear(from)} on`;

const FACT_WANTED: Partial<Record<JudgedClause['clause']['kind'], string>> = {
  soilPh: 'the soil’s pH is not given',
  organicMatter: 'the soil’s organic matter is not given (2 % is only what is taken where nothing is said)',
  soilTexture: 'the soil’s texture is not given (loam is only what is taken where nothing is said)',
  rate: 'the rate of active ingredient is not given',
  bioassay: 'no bioassay is told',
  annualRain: 'no year of the record is whole enough to tell',
  tillage: 'only you can tell',
  zone: 'only you can tell',
};

function standing({ clause, state, amountMm, odds, fieldValue }: JudgedClause, say: Say): string {
  if (clause.kind === 'annualRain' && amountMm !== null) {
    return `${state}, with ${say.water(amountMm)} a year in the record`;
  }
  const fact = FACT_WANTED[clause.kind];
  if (fact !== undefined) {
    return state === 'open' ? `open, for ${fact}` : `${state}${valueWords(clause.kind, fieldValue, say)}`;
  }
  const soFar = amountMm === null ? '' : `, ${say.water(amountMm)} so far`;
  if (state !== 'open') return `${state}${amountMm === null ? '' : `, with ${say.water(amountMm)}`}`;
  return odds === null
    ? `open${soFar}; too few usable years to give odds`
    : `open${soFar}; met in ${sayOddsOf(odds, 'seasons like this')}`;
}

function valueWords(kind: JudgedClause['clause']['kind'], value: number | null, say: Say): string {
  if (value === null) return '';
  if (kind === 'soilPh') return `, with pH ${value}`;
  return kind === 'rate' ? `, with ${say.rate(value)}` : `, with ${value} %`;
}

/** Intervals of several lines as one. */
export const intervalsInWords = (intervals: readonly Interval[]): string =>
  intervals.map(sayInterval).join(' or ');

function consequence(
  { clause, state, intervalIfMet, intervalIfNot, waitsForever }: JudgedClause,
  alsoIfMet: readonly Interval[],
): string {
  if (clause.kind === 'bioassay' && clause.role === 'alternative') return 'None is required for that alone.';
  if (clause.grants === 'short end') {
    const otherwise = intervalIfNot === null ? '' : `; otherwise ${sayInterval(intervalIfNot)}`;
    return `Asked for the shorter interval of ${sayInterval(intervalIfMet)}, which is told and not taken${otherwise}.`;
  }
  const byOthers = alsoIfMet.length === 0 ? '' : ', by its other conditions';
  const met = `Met, the label gives ${intervalsInWords([intervalIfMet, ...alsoIfMet])}${byOthers}`;
  if (intervalIfNot !== null) return `${met}; otherwise ${sayInterval(intervalIfNot)}.`;
  if (clause.ifNot === 'bioassay') return `${met}; otherwise a field bioassay decides.`;
  if (clause.ifNot === 'not stated')
    return `${met}; the source does not say how much longer it is otherwise: read your label.`;
  if (waitsForever && state !== 'met')
    return `${met}; until then the crop may not be sown, and no date within 3 years is sure enough.`;
  return `${met}; until then the crop may not be sown.`;
}

const capital = (text: string): string => text[0].toUpperCase() + text.slice(1);
