import { keepTogether, splitSentence } from '../answer/oddsInWords.ts';

interface AnswerHeadProps {
  /** What is said where the answer belongs to an older question; null where it is the present one's. */
  readonly stale: string | null;
  readonly sentence: string;
  /** The advice below it. */
  readonly rest?: string;
}

/** How an answer over many rows begins: whether it is still the one asked for, then the answer in a sentence. */
export function AnswerHead({ stale, sentence, rest }: AnswerHeadProps) {
  const { before, odds, after, condition } = splitSentence(keepTogether(sentence));
  return (
    <>
      {stale && (
        <p class="stale" data-testid="stale">
          {stale}
        </p>
      )}
      <h1 class="sentence" data-testid="sentence">
        {before}
        {odds}
        {after}
        {condition !== '' && <span class="condition">{condition}</span>}
      </h1>
      {rest && <p class="advice">{keepTogether(rest)}</p>}
    </>
  );
}
