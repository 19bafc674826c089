import type { Say } from '../app/say.ts';
import { sayOdds, sayOddsOf } from '../app/words.ts';
import type { Answer } from '../schema/answer.ts';
import type { CountingAdvice, LabelCondition } from '../schema/labelCondition.ts';
import { textTable } from './textTable.ts';

/** What stands beside an answer's dates: each species of a mix, the label's conditions, the published counting rules. */
export function conditionLines(
  { mix, conditions, countingWindows }: Answer,
  say: Say,
  wrap: (text: string, first: string, rest: string) => string,
): string[] {
  const list = (title: string, texts: readonly string[]) =>
    texts.length === 0 ? [] : ['', title, ...texts.map((text) => wrap(text, '- ', '  '))];
  return [
    ...mixLines(mix, say),
    ...list('Label conditions', conditions.map(conditionText)),
    ...list(
      'Counting rules: advice by region, which sets no date',
      countingWindows.map((rule) => countingText(rule, say)),
    ),
  ];
}

function mixLines(mix: Answer['mix'], say: Say): string[] {
  if (mix.length === 0) return [];
  const rows = mix.map(({ crop, interval, labelDate, clearDate, oddsAtPlanting, rules }) => [
    rules ? `${crop} (rules)` : crop,
    interval,
    say.dates.full(labelDate),
    clearDate === null ? 'not reached' : say.dates.full(clearDate),
    oddsAtPlanting === null ? 'none reckoned' : sayOdds(oddsAtPlanting),
  ]);
  const head = ['Species of the mix', 'Interval', 'Label date', 'Clear date', 'Odds at planting'];
  return ['', textTable([head, ...rows]).trimEnd()];
}

function conditionText({ text, setsDate, mark }: LabelCondition): string {
  const marks = [
    ...(mark === 'own label' ? ['your label'] : mark === 'seen' ? [] : [mark]),
    ...(setsDate ? [] : ['sets no date']),
  ];
  return marks.length === 0 ? text : `${text} (${marks.join('; ')})`;
}

/** A counting rule, and how its sum stands here. */
function countingText(rule: CountingAdvice, say: Say): string {
  const { region, advice, from, to, thresholdMm, source } = rule;
  const window =
    from === null
      ? ''
      : to === null
        ? `from ${say.dates.full(from)} on`
        : `from ${say.dates.near(from, to)} to ${say.dates.full(to)}`;
  const rain = thresholdMm === null ? '' : `${say.water(thresholdMm)} of rain`;
  const asked = [rain, window].filter((part) => part !== '').join(' ');
  return `${region}${asked === '' ? '' : `, ${asked}`}: ${advice}.${standing(rule, say)} (${source})`;
}

function standing({ thresholdMm, state, sumMm, through, oddsUnder }: CountingAdvice, say: Say): string {
  if (thresholdMm === null) return '';
  if (state === null) return ' Its window opens after planting, so it says nothing here.';
  const soFar =
    sumMm === null || through === null ? '' : ` ${say.water(sumMm)} to ${say.dates.full(through)},`;
  if (state !== 'open') return ` Here${soFar} ${state === 'under' ? 'under' : 'not under'} it.`;
  return ` Here${soFar} open${oddsUnder === null ? '' : `: under it at its end in ${sayOddsOf(oddsUnder, 'seasons')}`}.`;
}
