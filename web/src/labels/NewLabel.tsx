import { useState } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { Choices, LabelEntry, Problem } from '../api/contract.ts';
import { RefusedError } from '../api/requestJson.ts';
import { useFetched } from '../api/useFetched.ts';
import { today } from '../fields/nextPlan.ts';
import { freeId } from '../keep/freeId.ts';
import { putRecord } from '../keep/shelf.ts';
import { useKeptText } from '../keep/useKeptText.ts';
import { Blank, blankIds } from '../question/Blank.tsx';
import { go } from '../shell/places.ts';
import { labelAddress } from './labelAddress.ts';

/** What a label must say at the least: the product, an active, a crop and its interval. */
export function NewLabel({ taken }: { taken: readonly string[] }) {
  const choices = useFetched<Choices>('/api/choices');
  const [name, setName] = useKeptText('new-label-name');
  const [active, setActive] = useKeptText('new-label-active');
  const [crop, setCrop] = useKeptText('new-label-crop');
  const [interval, setInterval] = useKeptText('new-label-interval');
  const [tried, setTried] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [gone, setGone] = useState(false);

  async function add(event: Event): Promise<void> {
    event.preventDefault();
    setTried(true);
    if ([name, active, crop, interval].some((text) => text.trim() === '')) return;
    const entry: LabelEntry = {
      id: freeId(name, taken),
      name: name.trim(),
      actives: [{ name: active.trim() }],
      intervals: [{ crop: crop.trim(), interval: interval.trim(), clauses: [], conditions: '' }],
      labelVersion: '',
      enteredOn: today(),
      note: '',
    };
    setProblem(null);
    setGone(false);
    try {
      await putRecord('/api/labels', entry, null);
    } catch (error) {
      if (error instanceof RefusedError) setProblem(error.problem);
      else setGone(true);
      return;
    }
    for (const clear of [setName, setActive, setCrop, setInterval]) clear('');
    go(labelAddress(entry.id));
  }

  const blanks = [
    { id: 'new-label-name', label: 'Product, as you call it', text: name, set: setName, most: 120 },
    {
      id: 'new-label-active',
      label: 'Active ingredient',
      text: active,
      set: setActive,
      most: 80,
      list: 'known-actives',
    },
    { id: 'new-label-crop', label: 'Rotation crop', text: crop, set: setCrop, most: 80, list: 'known-crops' },
    {
      id: 'new-label-interval',
      label: 'Rotation interval, such as 9 months',
      text: interval,
      set: setInterval,
      most: 60,
    },
  ];
  return (
    <section class="new-field" aria-labelledby="new-label-title">
      <h2 id="new-label-title">{taken.length === 0 ? 'The first label' : 'Another label'}</h2>
      <form onSubmit={(event) => void add(event)} noValidate>
        {blanks.map(({ id, label, text, set, most, list }) => {
          const missing = tried && text.trim() === '' ? 'This is needed.' : null;
          return (
            <Blank key={id} id={id} label={label} problem={missing}>
              <input
                {...blankIds(id, { problem: missing })}
                type="text"
                autocomplete="off"
                list={list}
                maxLength={most}
                data-testid={id}
                value={text}
                onInput={({ currentTarget }) => set(currentTarget.value)}
              />
            </Blank>
          );
        })}
        <Known id="known-actives" names={choices.data?.residuals ?? []} />
        <Known id="known-crops" names={choices.data?.crops ?? []} />
        <button type="submit" class="button" data-testid="add-label">
          Add the label
        </button>
      </form>
      {problem && <ProblemNote problem={problem} />}
      {gone && <GoneNote />}
    </section>
  );
}

function Known({ id, names }: { id: string; names: readonly { readonly name: string }[] }) {
  return (
    <datalist id={id}>
      {names.map(({ name }) => (
        <option key={name} value={name} />
      ))}
    </datalist>
  );
}
