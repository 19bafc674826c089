import { oddsStep } from '../../../src/chart/oddsScale.ts';
import type { Answer } from '../api/contract.ts';
import { keepTogether, splitSentence } from './oddsInWords.ts';

/** The answer in one sentence, its odds underlined in their colour; then what to do about it. */
export function Sentence({ answer }: { answer: Answer }) {
  const { sentence, advice, oddsAtPlanting } = answer;
  const { before, odds, after, condition } = splitSentence(keepTogether(sentence));
  return (
    <>
      <h1 class="sentence" data-testid="sentence">
        {before}
        {odds !== '' && oddsAtPlanting !== null && (
          <span class="odds-value" data-testid="odds-value" data-step={oddsStep(oddsAtPlanting)}>
            {odds}
          </span>
        )}
        {after}
        {condition !== '' && <span class="condition">{condition}</span>}
      </h1>
      <p class="advice" data-testid="advice">
        {keepTogether(advice)}
      </p>
    </>
  );
}
