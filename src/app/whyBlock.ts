import type { SeasonOdds } from '../analysis/seasonOdds.ts';
import type { Why, WhyFactors } from '../analysis/why.ts';
import { isoDateOf } from '../calendar.ts';
import type { Answer } from '../schema/answer.ts';
import type { Say } from './say.ts';
import { sayBareOdds, sayDays } from './words.ts';

type WhyAnswer = NonNullable<Answer['why']>;

const NONE = { calendar: null, warmth: null, rain: null, dose: null, soil: null, whole: null };

/** The reasons behind the odds, as factors and in words. */
export function whyBlock(
  { factors, noFactors, rainDays, parts }: Why,
  odds: SeasonOdds,
  say: Say,
): WhyAnswer {
  const named = parts.map((part) => {
    const { residual = '', appliedDay } = odds.judged[part.application].application;
    return { ...part, residual, appliedOn: isoDateOf(appliedDay) };
  });
  return {
    ...(factors ?? NONE),
    rainDays,
    parts: named.map((part) => ({ ...part, application: part.application + 1 })),
    words: [
      ...(factors ? factorWords(factors) : []),
      ...(rainDays === null || rainDays === 0 ? [] : [rainDaysWords(rainDays)]),
      ...(noFactors === null ? [] : noFactorWords(noFactors, odds)),
      ...named.map((part) => partWords(part, say)),
    ],
  };
}

/** Factors this near to 1 are not worth a sentence. */
const PLAIN = 0.005;
const times = (factor: number): string => `× ${factor.toFixed(2)}`;

/** What a factor above 1 and one below 1 means. */
const MEANINGS: readonly (readonly [keyof Omit<WhyFactors, 'whole'>, string, string])[] = [
  ['calendar', 'for planting sooner than the label asks', 'for planting later than the label asks'],
  ['warmth', 'for a cold season', 'for a warm season'],
  ['rain', 'for rain shortfall and dry soil', 'for rain and moist soil beyond the label’s basis'],
  ['dose', 'for more than the full label dose', 'for less than the full label dose'],
  ['soil', 'for soil that breaks it down slowly', 'for soil that breaks it down fast'],
];

function factorWords(factors: WhyFactors): string[] {
  const whole =
    factors.whole > 1
      ? `By planting the field needs ${factors.whole.toFixed(2)} times the breakdown that a typical year brings.`
      : `By planting a typical year has brought all the breakdown that is needed: ${times(factors.whole)}.`;
  const told = MEANINGS.flatMap(([name, above, below]) => {
    const factor = factors[name];
    if (Math.abs(factor - 1) < PLAIN) return [];
    return [`${times(factor)} ${factor > 1 ? above : below}`];
  });
  return told.length === 0 ? [whole] : [whole, `${told.join(', ')}.`];
}

const rainDaysWords = (days: number): string =>
  days > 0
    ? `With the label’s own even rain it would be clear ${sayDays(days)} earlier.`
    : `With the label’s own even rain it would be clear ${sayDays(-days)} later.`;

function noFactorWords(
  noFactors: NonNullable<Why['noFactors']>,
  { judged, weights, years }: SeasonOdds,
): string[] {
  switch (noFactors) {
    case 'harmless dose':
      return [
        'The dose is below the harmless level from the start: the crop stands what the label itself leaves.',
      ];
    case 'no breakdown yet': {
      const still = years.filter(
        ({ breakdownDaysAtPlanting }, year) => breakdownDaysAtPlanting === 0 && weights[year] > 0,
      ).length;
      return [
        `Between spraying and planting nothing breaks down in ${still} of the ${years.length} years: the ground is frozen, under snow or bone dry.`,
      ];
    }
    case 'several parts':
      return [
        judged.length > 1
          ? 'Several applications count; each part is taken away in turn below.'
          : 'Leaves caught part of the spray, and rain washes it down later: no single factor tells that.',
      ];
  }
}

const partWords = (
  { residual, appliedOn, where, oddsWith, oddsWithout }: WhyAnswer['parts'][number],
  { dates }: Say,
): string =>
  `The ${residual} of ${dates.full(appliedOn)} that fell on ${where === 'ground' ? 'the ground' : 'leaves'}: ${sayBareOdds(oddsWith)} by itself; without it ${sayBareOdds(oddsWithout)}.`;
