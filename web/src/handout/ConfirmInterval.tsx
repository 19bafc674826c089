import { useState } from 'preact/hooks';
import { Blank, blankIds } from '../question/Blank.tsx';
import type { OpenInterval } from './openIntervals.ts';

interface ConfirmIntervalProps {
  readonly crop: string;
  readonly open: OpenInterval;
  /** How many more wait after this one. */
  readonly more: number;
  readonly confirm: (interval: string) => void;
}

/** In place of the sheet while an interval is not confirmed: why it does not print, and how it will. */
export function ConfirmInterval({ crop, open, more, confirm }: ConfirmIntervalProps) {
  const { interval, residual } = open;
  const [text, setText] = useState('');
  const [empty, setEmpty] = useState(false);
  const problem = empty ? 'Write what the label says, such as 9 months.' : null;
  return (
    <section class="handout-wait" data-testid="unconfirmed">
      <h1 class="place-title">Not yet to be printed: the interval is not confirmed</h1>
      <p>
        From {residual} to {crop} this answer takes {interval.text},{' '}
        {interval.fromMemory ? 'a figure from memory' : 'a published figure'}. A sheet that goes to a grower
        has to rest on the label of the product that was sprayed. Read it there, then say so here.
        {more > 0 &&
          ` ${more === 1 ? 'One more interval is' : `${more} more intervals are`} asked about after it.`}
      </p>
      <p>
        <button
          type="button"
          class="button"
          data-testid="confirm-sheet"
          onClick={() => confirm(interval.text)}
        >
          My label says {interval.text}
        </button>
      </p>
      <form
        class="handout-correct"
        onSubmit={(event) => {
          event.preventDefault();
          setEmpty(text.trim() === '');
          if (text.trim() !== '') confirm(text.trim());
        }}
      >
        <Blank
          id="sheet-interval"
          label="My label says something else"
          remark="Such as 9 months, or 1 month 15 days."
          problem={problem}
          after={
            <button type="submit" class="small-button">
              Take it
            </button>
          }
        >
          <input
            {...blankIds('sheet-interval', { remark: true, problem })}
            type="text"
            autocomplete="off"
            spellcheck={false}
            value={text}
            onInput={({ currentTarget }) => setText(currentTarget.value)}
          />
        </Blank>
      </form>
    </section>
  );
}
