export { sayOdds, twentieths } from '../../../src/chart/saidWords.ts';

import { ODDS_WORDS, oddsStep } from '../../../src/chart/oddsScale.ts';
import { joinIsoDates } from '../units/dates.ts';

/** The word that stands beside the number: "fairly often". */
export const oddsWord = (odds: number): string => ODDS_WORDS[oddsStep(odds)];

/** A month and its day, as the server's sentences write them. */
const MONTH_DAY =
  /\b((?:January|February|March|April|May|June|July|August|September|October|November|December)) (?=\d)/g;

/** Keeps a number with what it counts in, and a date, on one line. */
export const keepTogether = (text: string): string =>
  joinIsoDates(text)
    .replaceAll(' %', '\u00a0%')
    .replaceAll(/(\d+) in 20/g, '$1\u00a0in\u00a020')
    .replaceAll(MONTH_DAY, '$1\u00a0');

const SPACE = '[ \u00a0]';
const ODDS = new RegExp(`(?:about \\d+|fewer than 1|more than 19)${SPACE}in${SPACE}20`);

/**
 * A sentence in parts, for setting off: what comes before the odds, the odds, the rest, and the clause that says
 * on which unconfirmed interval it all rests. Joined again they are the sentence, whatever it says.
 */
export function splitSentence(sentence: string) {
  const from = sentence.indexOf(', if your label');
  const main = from < 0 ? sentence : sentence.slice(0, from);
  const condition = from < 0 ? '' : sentence.slice(from);
  const match = ODDS.exec(main);
  if (!match) return { before: main, odds: '', after: '', condition };
  const end = match.index + match[0].length;
  return { before: main.slice(0, match.index), odds: match[0], after: main.slice(end), condition };
}
