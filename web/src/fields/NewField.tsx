import { useEffect, useState } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { Example, FieldRecord, Problem } from '../api/contract.ts';
import { RefusedError, requestJson } from '../api/requestJson.ts';
import { freeId } from '../keep/freeId.ts';
import { putRecord } from '../keep/shelf.ts';
import { useKeptText } from '../keep/useKeptText.ts';
import { Blank, blankIds } from '../question/Blank.tsx';
import { go } from '../shell/places.ts';
import { demoField } from './demoField.ts';
import { emptyField } from './emptyField.ts';
import { fieldAddress } from './fieldsAddress.ts';

interface NewFieldProps {
  readonly taken: readonly string[];
  readonly farms: readonly string[];
  readonly isFirst: boolean;
}

const NAME_MOST = 120;

/** A name begins a field; everything else is entered on its own page. Where there is none yet, an invented one is offered. */
export function NewField({ taken, farms, isFirst }: NewFieldProps) {
  const [name, setName] = useKeptText('new-field-name');
  const [farm, setFarm] = useKeptText('new-field-farm');
  const [missing, setMissing] = useState<string | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [gone, setGone] = useState(false);
  const [example, setExample] = useState<Example | null>(null);
  useEffect(() => {
    if (isFirst) requestJson<Example>('/api/example').then(setExample, () => undefined);
  }, [isFirst]);

  async function keep(record: FieldRecord): Promise<void> {
    setProblem(null);
    setGone(false);
    try {
      await putRecord('/api/fields', record, null);
    } catch (error) {
      if (error instanceof RefusedError) setProblem(error.problem);
      else setGone(true);
      return;
    }
    setName('');
    setFarm('');
    go(fieldAddress(record.id));
  }

  function add(event: Event): void {
    event.preventDefault();
    const clean = name.trim();
    setMissing(clean === '' ? 'Give the field a name, such as Home quarter.' : null);
    if (clean !== '') void keep(emptyField(freeId(`${farm} ${clean}`, taken), clean, farm.trim()));
  }

  return (
    <section class="new-field" aria-labelledby="new-field-title">
      <h2 id="new-field-title">{isFirst ? 'The first field' : 'Another field'}</h2>
      <form onSubmit={add} noValidate>
        <Blank id="new-field-name" label="Name of the field" problem={missing}>
          <input
            {...blankIds('new-field-name', { problem: missing })}
            type="text"
            autocomplete="off"
            maxLength={NAME_MOST}
            data-testid="new-name"
            value={name}
            onInput={({ currentTarget }) => setName(currentTarget.value)}
          />
        </Blank>
        <Blank id="new-field-farm" label="Farm, if you sort by farms">
          <input
            {...blankIds('new-field-farm', {})}
            type="text"
            autocomplete="off"
            list="known-farms"
            maxLength={NAME_MOST}
            data-testid="new-farm"
            value={farm}
            onInput={({ currentTarget }) => setFarm(currentTarget.value)}
          />
        </Blank>
        <datalist id="known-farms">
          {farms
            .filter((known) => known !== '')
            .map((known) => (
              <option key={known} value={known} />
            ))}
        </datalist>
        <button type="submit" class="button" data-testid="add-field">
          Add the field
        </button>
      </form>
      {problem && <ProblemNote problem={problem} />}
      {gone && <GoneNote />}
      {isFirst && example && (
        <div class="offer">
          <p>
            Or look around first: {example.farm.name}, {example.farm.field.toLowerCase()} is the field of the
            worked question. Farm, field and weather are invented.
          </p>
          <button
            type="button"
            class="small-button"
            data-testid="demo-field"
            onClick={() => void keep(demoField(example, taken))}
          >
            Take the invented field
          </button>
        </div>
      )}
    </section>
  );
}
