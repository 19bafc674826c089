/** Words for numbers that people say aloud. English; dates and amounts with units stand in say.ts. */

import { rangeWords, sayOdds as sayBareOdds } from '../chart/saidWords.ts';

/** The way to say odds where a sentence holds more than one: a percentage stands once in a sentence at most. */
export { rangeWords, sayBareOdds };

/**
 * Odds as a frequency out of 20 with their percentage: "about 6 in 20 (29 %)".
 * @param odds probability [0-1]
 */
export function sayOdds(odds: number): string {
  const said = sayBareOdds(odds);
  return said.startsWith('about') ? `${said} (${Math.round(odds * 100)} %)` : said;
}

/** The same with what is counted: "about 6 in 20 seasons like this (29 %)". */
export const sayOddsOf = (odds: number, counted: string): string =>
  sayOdds(odds).replace(/ in 20( \(\d+ %\))?$/, (_, percent = '') => ` in 20 ${counted}${percent}`);

/** An odds limit as the user set it: "2 in 20", or a percentage where twentieths do not fit. */
export function sayLimit(limit: number): string {
  const twentieths = limit * 20;
  return Math.abs(twentieths - Math.round(twentieths)) < 1e-9
    ? `${Math.round(twentieths)} in 20`
    : `${Number((limit * 100).toPrecision(3))} %`;
}

/** A length of time in the unit a person would use: "12 days", "3 weeks", "5 months". */
export function sayDays(days: number): string {
  if (days < 14) return count(Math.round(days), 'day');
  if (days < 70) return count(Math.round(days / 7), 'week');
  return count(Math.round(days / 30.44), 'month');
}

/** "1 day", "2 days". */
export const count = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`;
