import type { Hindcast } from '../schema/hindcast.ts';
import { wrap } from './answerText.ts';
import { textTable } from './textTable.ts';

/** Outcomes left out that are named one by one. */
const SHOWN = 10;

/** The tally of outcomes in kept fields: the finding, bands of odds, what it means; nothing where none is recorded. */
export function tallyLines(recorded: Hindcast['recorded']): string[] {
  if (recorded === null || recorded.counted + recorded.leftOut.length === 0) return [];
  const { sentence, meaning, counted, brier, skill, bins, leftOut } = recorded;
  const percent = (value: number) => `${Math.round(value * 100)} %`;
  const bands = textTable([
    ['odds given', 'crops', 'hurt', 'mean', '95 % of chance'],
    ...bins.map(({ from, to, outcomes, injured, meanOdds, low, high }) => [
      `${percent(from)} to ${percent(to)}`,
      String(outcomes),
      String(injured),
      percent(meanOdds),
      `${percent(low)} to ${percent(high)}`,
    ]),
  ]);
  const score = `Brier score ${brier?.toFixed(4)}, skill ${skill === null ? 'not to be told: all or none were hurt' : skill.toFixed(2)}.`;
  return [
    '',
    'In kept fields',
    wrap(sentence),
    ...(counted > 0 ? ['', bands, wrap(score)] : []),
    ...(counted > 0 ? [wrap(meaning)] : []),
    ...leftOut
      .slice(0, SHOWN)
      .map(({ name, crop, lookedAtOn, reason }) =>
        wrap(`Left out: ${name}, ${crop} looked at on ${lookedAtOn}. ${reason}`),
      ),
  ];
}
