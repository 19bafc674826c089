import type { IfNot, TracedClause } from '../schema/clauses.ts';
import type { Say } from './say.ts';

/** A clause in words, with what holds where it fails. */
export function clauseWords(clause: TracedClause, say: Say): string {
  const granted = clause.grants === 'short end' ? ' for the shorter interval' : '';
  return `${conditionOf(clause, say)}${granted}; ${failureOf(clause.ifNot)}`;
}

function conditionOf(clause: TracedClause, say: Say): string {
  switch (clause.kind) {
    case 'water':
      return `at least ${say.water(clause.minMm)} of ${clause.counts} from ${endOf(clause.window.from, say)} to ${endOf(clause.window.to, say)}`;
    case 'startingRain':
      return `counted from the day on which ${say.water(clause.minMm)} of rain have fallen${clause.onDrySoilOnly ? ', on dry soil' : ''}`;
    case 'stormGuard':
      return `at least ${say.water(clause.minMm)} of rain by ${endOf(clause.by, say)}, not by late storms alone`;
    case 'annualRain':
      return `at least ${say.water(clause.minMm)} of ${clause.counts} in a mean year`;
    case 'soilPh':
      return `soil pH ${bandOf(clause.atLeast, clause.below, String, 'below')}`;
    case 'organicMatter':
      return `organic matter of at least ${clause.minPercent} %`;
    case 'soilTexture':
      return `${clause.groups.join(' or ')} soil`;
    case 'tillage':
      return 'tillage before planting';
    case 'zone':
      return clause.words;
    case 'rate':
      return `rate ${bandOf(clause.fromGramsPerHa, clause.toGramsPerHa, say.rate, 'up to')}`;
    case 'bioassay':
      return clause.role === 'required' ? 'a clean field bioassay' : 'a clean field bioassay may stand in';
  }
}

const endOf = (end: string, { dates }: Say): string =>
  ({
    application: 'application',
    planting: 'planting',
    'interval end': 'the end of the interval',
    'spring end': 'the end of spring',
    unknown: 'a date not known',
  })[end] ?? dates.everyYear(end);

function bandOf(
  low: number | undefined,
  high: number | undefined,
  said: (value: number) => string,
  under: string,
): string {
  if (low === undefined) return `${under} ${said(high ?? 0)}`;
  return high === undefined ? `${said(low)} and above` : `from ${said(low)} to ${said(high)}`;
}

function failureOf(ifNot: IfNot): string {
  if (ifNot === 'not allowed') return 'not to be sown before';
  if (ifNot === 'bioassay') return 'otherwise a field bioassay decides';
  if (ifNot === 'not stated') return 'the source does not say what holds otherwise';
  return 'months' in ifNot ? `otherwise ${ifNot.months} months` : `otherwise ${ifNot.days} days`;
}
