import { timesText, WHY_FACTORS, WHY_NAMES } from '../../../src/chart/whyWaterfall.ts';
import { sayOdds } from '../answer/oddsInWords.ts';
import type { Answer } from '../api/contract.ts';

type Why = NonNullable<Answer['why']>;

/** Which reason weighs most, and what all of them make together. */
export function whyFinding(why: Why): string {
  const { whole, parts } = why;
  if (whole !== null) {
    const weight = (name: (typeof WHY_FACTORS)[number]) => Math.abs(Math.log(why[name] ?? 1));
    const heaviest = WHY_FACTORS.reduce((most, name) => (weight(name) > weight(most) ? name : most));
    const factor = why[heaviest] ?? 1;
    if (Math.abs(factor - 1) < 0.005)
      return 'Nothing sets this season apart from what the label reckons with.';
    const name = heaviest === 'soil' ? WHY_NAMES.soil.replace('S', 's') : WHY_NAMES[heaviest].toLowerCase();
    return `The heaviest reason is ${name}, ${timesText(factor)}; all together make ${timesText(whole)}.`;
  }
  if (parts.length > 0) {
    const worst = parts.reduce((most, part) => (part.oddsWith > most.oddsWith ? part : most));
    return `What fell on ${placeWords(worst.where)} counts most: ${sayOdds(worst.oddsWith)} by itself.`;
  }
  return 'No single factor tells why here.';
}

/** Where a part of the dose fell, in words. */
export const placeWords = (where: Why['parts'][number]['where']): string =>
  where === 'ground' ? 'the ground' : 'leaves';
