import type { Answer } from '../schema/answer.ts';

const BARS = ['·', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];

/**
 * The years as a strip of bars, driest on the left, wettest on the right; a bar's height is the odds in that
 * year's weather.
 */
export function yearStrip(years: Answer['years']): string[] {
  const sorted = years.toSorted((a, b) => a.warmRainMm - b.warmRainMm);
  const bars = sorted.map(({ probability }) => BARS[Math.round(probability * (BARS.length - 1))]).join('');
  const [driest] = sorted;
  const wettest = sorted[sorted.length - 1];
  const ends = `${driest.year}`.padEnd(Math.max(bars.length - 4, 5)) + wettest.year;
  return ['Each year’s odds, driest to wettest by warm rain (· none, █ certain)', bars, ends];
}
