import type { StoredLabel } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { ChoiceBlank } from './ChoiceBlank.tsx';
import { useForm } from './FormContext.ts';

const NONE = 'none';

/** The user’s own label entry, which wins over the catalogue; absent while there is none to choose. */
export function LabelEntryBlank() {
  const { question, change } = useForm();
  const { data } = useFetched<{ labels: StoredLabel[] }>('/api/labels');
  const chosen = question.labelEntry;
  const labels = data?.labels ?? [];
  if (labels.length === 0 && chosen === undefined) return null;
  const options = labels.map(({ entry }) => ({
    value: entry.id,
    text: `${entry.name} (${entry.actives.map(({ name }) => name).join(', ')})`,
  }));
  const listed = options.some(({ value }) => value === chosen);
  return (
    <ChoiceBlank
      field="labelEntry"
      label="Your own label entry"
      value={chosen ?? NONE}
      options={[
        { value: NONE, text: 'none: the catalogue counts' },
        ...options,
        ...(chosen !== undefined && !listed ? [{ value: chosen, text: chosen }] : []),
      ]}
      remark="Its interval and rate win over the catalogue’s."
      commit={(id) => change({ labelEntry: id === NONE ? undefined : id })}
    />
  );
}
