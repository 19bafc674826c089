import { useState } from 'preact/hooks';
import { keepTogether, sayOdds } from '../answer/oddsInWords.ts';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { Problem, Refresh, StoredField } from '../api/contract.ts';
import { RefusedError, requestJson } from '../api/requestJson.ts';
import { asking, presentWording, useDates } from '../units/useDates.ts';
import { fieldAddress } from './fieldsAddress.ts';

interface RefreshPanelProps {
  readonly fields: readonly StoredField[];
  readonly done: () => void;
}

type Outcome = { readonly refresh: Refresh } | { readonly problem: Problem } | { readonly gone: true } | null;

/** Answers all fields again, with newer weather unless it is not wanted, and lists what has changed, largest first. */
export function RefreshPanel({ fields, done }: RefreshPanelProps) {
  const [fetch, setFetch] = useState(true);
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Outcome>(null);

  async function bringUp(): Promise<void> {
    setBusy(true);
    try {
      const refresh = await requestJson<Refresh>(asking('/api/fields/refresh', presentWording()), {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ fetch }),
      });
      setOutcome({ refresh });
      done();
    } catch (error) {
      setOutcome(error instanceof RefusedError ? { problem: error.problem } : { gone: true });
    }
    setBusy(false);
  }

  return (
    <section class="refresh" aria-label="Bring up to date">
      <div class="do-row">
        <button
          type="button"
          class="button"
          data-testid="refresh"
          aria-disabled={busy}
          onClick={() => !busy && void bringUp()}
        >
          Bring up to date
        </button>
        <label class="tick">
          <input
            type="checkbox"
            checked={fetch}
            onChange={({ currentTarget }) => setFetch(currentTarget.checked)}
          />
          with newer weather of its stations from the public record service
        </label>
      </div>
      <p role="status" class={busy ? undefined : 'unseen'}>
        {busy ? 'Answering every field again…' : ''}
      </p>
      {outcome !== null && 'problem' in outcome && <ProblemNote problem={outcome.problem} />}
      {outcome !== null && 'gone' in outcome && <GoneNote retry={() => void bringUp()} />}
      {outcome !== null && 'refresh' in outcome && <Changes refresh={outcome.refresh} fields={fields} />}
    </section>
  );
}

/** What has changed since the fields were last brought up to date. */
function Changes({ refresh, fields }: { refresh: Refresh; fields: readonly StoredField[] }) {
  const { changes, problems, answered, weather } = refresh;
  const nameOf = (id: string) => fields.find(({ record }) => record.id === id)?.record.name ?? id;
  const { short } = useDates();
  const clear = (date: string | null) => (date === null ? 'none found' : short(date));
  const odds = (value: number | null) => (value === null ? 'not reckoned' : sayOdds(value));
  return (
    <div class="changes" data-testid="changes">
      <p>{weather.text}</p>
      <p>
        {answered === 1 ? 'One planned crop has' : `${answered} planned crops have`} an answer
        {problems.length > 0 && `, ${problems.length} ${problems.length === 1 ? 'has' : 'have'} none yet`}.{' '}
        {changes.length === 0 && 'Nothing has changed since the last time.'}
      </p>
      {changes.length > 0 && (
        <ol>
          {changes.map(({ fieldId, planId, text, was, is }) => (
            <li key={`${fieldId} ${planId}`}>
              <a href={fieldAddress(fieldId)}>{nameOf(fieldId)}</a>: {keepTogether(text)}
              <small>
                Was {odds(was.oddsAtPlanting)}, clear {clear(was.clearDate)}; is {odds(is.oddsAtPlanting)},
                clear {clear(is.clearDate)}.
              </small>
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}
