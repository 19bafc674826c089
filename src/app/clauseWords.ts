import type { IfNot, TracedClause } from '../schema/clauses.ts';

/** A clause in words, with what holds where it fails. Metric. */
export function clauseWords(clause: TracedClause): string {
  const granted = clause.grants === 'short end' ? ' for the shorter interval' : '';
  return `${conditionOf(clause)}${granted}; ${failureOf(clause.ifNot)}`;
}

function conditionOf(clause: TracedClause): string {
  switch (clause.kind) {
    case 'water':
      return `at least ${clause.minMm} mm of ${clause.counts} from ${clause.window.from} to ${endOf(clause.window.to)}`;
    case 'startingRain':
      return `counted from the day on which ${clause.minMm} mm of rain have fallen${clause.onDrySoilOnly ? ', on dry soil' : ''}`;
    case 'stormGuard':
      return `at least ${clause.minMm} mm of rain by ${endOf(clause.by)}, not by late storms alone`;
    case 'annualRain':
      return `at least ${clause.minMm} mm of ${clause.counts} in a mean year`;
    case 'soilPh':
      return `soil pH ${bandOf(clause.atLeast, clause.below, '', 'below')}`;
    case 'organicMatter':
      return `organic matter of at least ${clause.minPercent} %`;
    case 'tillage':
      return 'tillage before planting';
    case 'zone':
      return clause.words;
    case 'rate':
      return `rate ${bandOf(clause.fromGramsPerHa, clause.toGramsPerHa, ' g/ha', 'up to')}`;
    case 'bioassay':
      return clause.role === 'required' ? 'a clean field bioassay' : 'a clean field bioassay may stand in';
  }
}

const endOf = (end: string): string =>
  ({
    'interval end': 'the end of the interval',
    'spring end': 'the end of spring',
    unknown: 'a date not known',
  })[end] ?? end;

function bandOf(low: number | undefined, high: number | undefined, unit: string, under: string): string {
  if (low === undefined) return `${under} ${high}${unit}`;
  return high === undefined ? `${low}${unit} and above` : `from ${low} to ${high}${unit}`;
}

function failureOf(ifNot: IfNot): string {
  if (ifNot === 'not allowed') return 'not to be sown before';
  if (ifNot === 'bioassay') return 'otherwise a field bioassay decides';
  if (ifNot === 'not stated') return 'the source does not say what holds otherwise';
  return 'months' in ifNot ? `otherwise ${ifNot.months} months` : `otherwise ${ifNot.days} days`;
}
