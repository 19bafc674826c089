import { twentieths } from '../answer/oddsInWords.ts';
import type { Hindcast } from '../api/contract.ts';

type Scores = Hindcast['overall'];

/** What the scores mean. The spread of the outcomes is what always giving their base rate scores. */
export function scoreWords({ brier, skill, baseRate, uncertainty, brierWithWeatherKnown }: Scores): string[] {
  return [
    `Brier score ${brier.toFixed(3)}: the mean squared distance between the odds given and what came. 0 would be perfect.`,
    `Always giving the base rate of ${twentieths(baseRate)} in 20, whatever the season, would have scored ${uncertainty.toFixed(3)}. ${skillWords(skill)}`,
    `With each season’s weather known beforehand ${brierWithWeatherKnown.toFixed(3)} would be left: that much is the soils’ own spread, which no knowledge of rain takes away.`,
  ];
}

function skillWords(skill: number | null): string {
  if (skill === null) return 'Harm came always or never, so there is no skill to speak of.';
  const percent = Math.round(Math.abs(skill) * 100);
  if (percent === 0) return 'The odds do as well as that, and no better.';
  return skill > 0
    ? `The odds take ${percent} % off that: their skill is ${skill.toFixed(2)}.`
    : `The odds do ${percent} % worse than that: their skill is ${skill.toFixed(2)}.`;
}

/** When odds were given. */
export const leadName = ({ leadDays, plan }: Hindcast['leads'][number]): string =>
  plan ? `${leadDays} days before, not yet sprayed` : `${leadDays} days before planting`;

/** What the drawing shows. */
export function reliabilityFinding({ bins }: Pick<Scores, 'bins'>): string {
  const beside = bins.filter(({ meanOdds, low, high }) => meanOdds < low || meanOdds > high);
  if (bins.length === 1) {
    return beside.length === 0
      ? 'All odds fell into one band, and what came there is within chance of them.'
      : 'All odds fell into one band, and what came there lies beyond what chance explains.';
  }
  if (beside.length === 0)
    return `In all ${bins.length} bands of odds, what came is within chance of the odds given.`;
  const over = beside.filter(({ meanOdds, high }) => meanOdds > high).length;
  const sides = [
    over > 0 ? `${over} said too much` : null,
    beside.length > over ? `${beside.length - over} said too little` : null,
  ].filter((side) => side !== null);
  return `In ${beside.length} of ${bins.length} bands of odds, what came lies beyond what chance explains: ${sides.join(', ')}.`;
}

/** The bounds of a band of odds, in twenty. */
export const bandName = ({ from, to }: { readonly from: number; readonly to: number }): string =>
  `${Math.round(from * 20)} to ${Math.round(to * 20)}`;

/** Beginning of the name of a file of figures looked back on. */
export function lookBackStem({ residual, crop, station }: Hindcast): string {
  return ['drywake', ...(station.invented ? ['invented'] : []), residual, crop, 'looked-back']
    .join('-')
    .replaceAll(/[^\w.-]+/g, '-');
}
