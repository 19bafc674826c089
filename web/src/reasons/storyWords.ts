import { keepTogether, sayOdds as sayPlainOdds } from '../answer/oddsInWords.ts';
import type { Answer } from '../api/contract.ts';
import type { DateWords } from '../units/dates.ts';
import { rainText, type Units } from '../units/units.ts';

const sayOdds = (odds: number): string => keepTogether(sayPlainOdds(odds));

type Story = NonNullable<Answer['season']>['story'];

/** How the odds have moved since the spraying; while planning, what waiting gains. */
export function storyFinding({ weeks, delay }: Story, plantOn: string, dates: DateWords): string {
  const [plan, ...since] = weeks;
  const now = since.at(-1);
  if (!plan || !now) return delayFinding(delay);
  const [then, today] = [sayOdds(plan.odds), sayOdds(now.odds)];
  if (then === today)
    return `Since spraying the odds for ${dates.monthDay(plantOn)} have stayed at ${today}.`;
  const way = now.odds > plan.odds ? 'risen' : 'fallen';
  return `Since spraying the odds for ${dates.monthDay(plantOn)} have ${way}, from ${then} to ${today}.`;
}

/** What the next weeks of waiting gain. */
export function delayFinding(delay: Story['delay']): string {
  const [first] = delay;
  if (!first) return 'The search ends before a later planting.';
  const gained = first.gain * 20;
  if (gained < 0.05) return 'Planting later gains next to nothing.';
  return `A week later would be ${sayOdds(first.odds)}: ${gained.toFixed(1)} in 20 gained.`;
}

/** Rain and breakdown days to date against normal, in sentences; empty while planning. */
export function toDateWords({ rainShortfallMm, breakdown }: Story, units: Units): string[] {
  const words: string[] = [];
  if (rainShortfallMm !== null) {
    const way = rainShortfallMm >= 0 ? 'short of' : 'above';
    words.push(`Rain since spraying is ${rainText(Math.abs(rainShortfallMm), units)} ${way} normal.`);
  }
  if (breakdown !== null) {
    const { toDate, normal, shortfall } = breakdown;
    const way = shortfall >= 0 ? 'behind' : 'ahead';
    words.push(
      `${toDate.toFixed(1)} breakdown days have gone by, against ${normal.toFixed(1)} in a normal year: ${Math.abs(shortfall).toFixed(1)} ${way}.`,
    );
  }
  return words;
}

/** A step of the story as a row of its table. */
export interface StoryRow {
  readonly about: string;
  readonly date: string | null;
  readonly plantOn: string;
  readonly odds: number;
  /** Less than the step before it; null for the first. [0-1] */
  readonly change: number | null;
}

/** What the row stands for in which nothing was observed yet. */
export const PLANNED = 'as planned';

/** Weeks known and weeks of delay as rows of one table. */
export function storyRows({ weeks, delay }: Story, plantOn: string): StoryRow[] {
  const known = weeks.map(({ observedThrough, odds }, index) => ({
    about: observedThrough === null ? PLANNED : 'as known then',
    date: observedThrough,
    plantOn,
    odds,
    change: index === 0 ? null : odds - weeks[index - 1].odds,
  }));
  const later = delay.map((step) => ({
    about: `${step.weeks} ${step.weeks === 1 ? 'week' : 'weeks'} later`,
    date: null,
    plantOn: step.plantOn,
    odds: step.odds,
    change: -step.gain,
  }));
  return [...known, ...later];
}
