import { useState } from 'preact/hooks';
import { Blank, blankIds } from '../question/Blank.tsx';
import { sayOddsLimit } from '../question/questionInWords.ts';
import type { Change } from './Alternatives.tsx';
import { keepStakes, keptStakes, readStakes, type StakesTexts } from './stakes.ts';

const BLANKS = [
  { key: 'cost', label: 'Waiting, or another crop, costs' },
  { key: 'loss', label: 'A hurt crop would lose' },
] as const;

/** Turns the cost of waiting and the loss it avoids into an odds limit. */
export function OddsLimitHelper({ present, change }: { present: number; change: Change }) {
  const [stakes, setStakes] = useState(keptStakes);
  const [left, setLeft] = useState(true);
  const reading = readStakes(stakes);
  const problem = left && reading !== null && 'problem' in reading ? reading.problem : null;
  const limit = reading !== null && 'limit' in reading ? reading.limit : null;
  const set = (part: Partial<StakesTexts>) => {
    const next = { ...stakes, ...part };
    setLeft(false);
    setStakes(next);
    keepStakes(next);
  };
  return (
    <div class="fold-body limit-helper">
      <p>
        Waiting costs its price for certain; planting risks the loss. Waiting pays where the odds are above
        the one over the other. Give both per acre, in the same money.
      </p>
      <div class="blank-two">
        {BLANKS.map(({ key, label }) => {
          const id = `stakes-${key}`;
          return (
            <Blank key={key} id={id} label={label} unit="per acre">
              <input
                {...blankIds(id, { unit: true })}
                aria-describedby={problem ? 'stakes-problem' : undefined}
                aria-invalid={problem ? 'true' : undefined}
                type="text"
                inputMode="decimal"
                autocomplete="off"
                data-testid={id}
                value={stakes[key]}
                onInput={({ currentTarget }) => set({ [key]: currentTarget.value })}
                onBlur={() => setLeft(true)}
              />
            </Blank>
          );
        })}
      </div>
      {problem && (
        <p class="blank-problem" id="stakes-problem">
          {problem}
        </p>
      )}
      {limit !== null && (
        <p data-testid="stakes-limit">
          Waiting pays where the odds are above <b>{sayOddsLimit(limit)}</b>; your limit is now{' '}
          {sayOddsLimit(present)}.{' '}
          <button type="button" class="small-button" onClick={() => change({ oddsLimit: limit })}>
            Take {sayOddsLimit(limit)} as the limit
          </button>
        </p>
      )}
    </div>
  );
}
