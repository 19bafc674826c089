import type { Finding } from '../analysis/evidence.ts';
import { oddsGiven } from '../analysis/plantingOdds.ts';
import type { SeasonOdds } from '../analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { isoDateOf } from '../calendar.ts';
import type { Answer } from '../schema/answer.ts';
import type { FindingInput } from '../schema/evidence.ts';
import type { Say } from './say.ts';
import { sayBareOdds, sayLimit } from './words.ts';

type Evidence = NonNullable<Answer['evidence']>;

/** Odds from which on waiting or another crop is wiser than a bioassay. [0-1] */
const HIGH_ODDS = 0.75;

/**
 * What the evidence did to the odds at planting, and what a bioassay would do.
 * @param how a bioassay is run, in short; without a known half-life what one would show cannot be reckoned
 */
export function evidenceBlock(
  inputs: readonly FindingInput[],
  question: SeasonQuestion,
  odds: SeasonOdds,
  {
    how,
    knownHalfLife,
    say,
  }: { readonly how: string | null; readonly knownHalfLife: boolean; readonly say: Say },
): Evidence {
  const given = inputs.toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  const findings = given.map((finding, index) => {
    const oddsAfter = odds.oddsByEvidence[index + 1];
    const moved = `${sayBareOdds(odds.oddsByEvidence[index])} before it, ${sayBareOdds(oddsAfter)} after`;
    return {
      kind: finding.kind,
      on: finding.on,
      oddsAfter,
      text: `${wordsOf(finding)} on ${say.dates.full(finding.on)}: ${moved}.`,
    };
  });
  return {
    oddsBefore: odds.oddsByEvidence[0],
    oddsAfter: odds.oddsAtPlanting,
    findings,
    bioassay: { ...bioassayAdvice(question, odds, knownHalfLife, say), how },
  };
}

function wordsOf(finding: FindingInput): string {
  if (finding.kind === 'bioassay')
    return `A bioassay ${finding.injured ? 'hurt the plants' : 'stayed clean'}`;
  return finding.detected
    ? 'A soil test found residue'
    : 'A soil test found none, taken as half its detection limit';
}

function bioassayAdvice(
  question: SeasonQuestion,
  odds: SeasonOdds,
  knownHalfLife: boolean,
  { dates }: Say,
): Omit<Evidence['bioassay'], 'how'> {
  const { oddsAtPlanting, observedDays, plantOffset, firstDay } = odds;
  const limit = sayLimit(question.oddsLimit);
  const worthIt = oddsAtPlanting > question.oddsLimit && oddsAtPlanting < HIGH_ODDS;
  const open = observedDays > 0 && observedDays <= plantOffset && knownHalfLife;
  if (!open) {
    const text = worthIt
      ? `The odds are neither low nor high: plan a field bioassay before planting.`
      : notWorth(oddsAtPlanting, question.oddsLimit, limit);
    return { worthIt, oddsIfClean: null, oddsIfInjured: null, text };
  }
  const day = firstDay + observedDays - 1;
  const ifFound = (injured: boolean) => {
    const known = [...(question.evidence ?? [])].sort((a, b) => a.day - b.day);
    const more: Finding = { kind: 'bioassay', day, injured };
    return oddsGiven(odds, [...known, more], question.assumptions);
  };
  const [oddsIfClean, oddsIfInjured] = [ifFound(false), ifFound(true)];
  const decides =
    oddsIfClean <= question.oddsLimit
      ? `a clean one would bring them within your limit of ${limit}`
      : `even a clean one would leave them above your limit of ${limit}, but later in the season it tells more`;
  const text = worthIt
    ? `The odds are neither low nor high, so a field bioassay helps: with soil of ${dates.full(isoDateOf(day))}, clean plants would make it ${sayBareOdds(oddsIfClean)}, hurt ones ${sayBareOdds(oddsIfInjured)}; ${decides}.`
    : notWorth(oddsAtPlanting, question.oddsLimit, limit);
  return { worthIt, oddsIfClean, oddsIfInjured, text };
}

const notWorth = (odds: number, oddsLimit: number, limit: string): string =>
  odds <= oddsLimit
    ? `The odds are within your limit of ${limit} without a field bioassay.`
    : 'The odds are high enough to wait or change the crop without a field bioassay.';
