import type { Answer } from '../api/contract.ts';
import { Blank, blankIds } from './Blank.tsx';
import { useForm } from './FormContext.ts';
import { useBlank } from './useBlank.ts';

/** The rotation interval of the user’s own label; empty, the catalogue’s figure counts and is named. */
export function IntervalBlank({ used }: { used: Answer['inputs']['interval'] | null }) {
  const { question, change } = useForm();
  const { input, problem } = useBlank<string | undefined>({
    field: 'interval',
    shown: question.interval ?? '',
    read: (text) => ({ value: text.trim() === '' ? undefined : text.trim() }),
    commit: (interval) => change({ interval }),
  });
  const open = used !== null && !used.confirmed && question.interval === undefined;
  const remark = open
    ? `Empty: ${used.text} is taken, ${used.fromMemory ? 'a figure from memory' : 'as published'}, not confirmed.`
    : 'Such as 9 months, or 1 month 15 days.';
  return (
    <div class="blank-group">
      <Blank
        id="blank-interval"
        lead="My label says"
        label="Rotation interval on your label"
        remark={remark}
        problem={problem}
      >
        <input
          {...blankIds('blank-interval', { remark, problem })}
          {...input}
          type="text"
          autocomplete="off"
          spellcheck={false}
        />
      </Blank>
      {open && (
        <button
          type="button"
          class="small-button confirm"
          data-testid="confirm-interval"
          onClick={() => change({ interval: used.text })}
        >
          My label says {used.text}
        </button>
      )}
    </div>
  );
}
