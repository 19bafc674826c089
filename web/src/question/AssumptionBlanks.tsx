import { ASSUMPTIONS, type AssumptionEntry } from '../../../src/schema/assumptionList.ts';
import { ChoiceBlank } from './ChoiceBlank.tsx';
import { useForm } from './FormContext.ts';
import { NumberBlank } from './NumberBlank.tsx';

/** Every assumption of the model as a blank of its own, or only some of them. */
export function AssumptionBlanks({ wanted }: { wanted?: (key: AssumptionEntry['key']) => boolean }) {
  return (
    <div class="blank-list">
      {ASSUMPTIONS.filter(({ key }) => wanted?.(key) ?? true).map((entry) => (
        <AssumptionBlank key={entry.key} entry={entry} />
      ))}
    </div>
  );
}

function AssumptionBlank({ entry }: { entry: AssumptionEntry }) {
  const { question, change, units } = useForm();
  const { key, words, standard, min, max, quantity, unit, blank } = entry;
  const value = question.assume?.[key];
  const commit = (next: unknown) => {
    const { [key]: _, ...rest } = question.assume ?? {};
    const assume = next === undefined || next === standard ? rest : { ...rest, [key]: next };
    change({ assume: Object.keys(assume).length === 0 ? undefined : assume });
  };
  if (words !== undefined) {
    return (
      <ChoiceBlank
        field={`assume.${key}`}
        value={`${value ?? standard}`}
        options={Object.entries(words).map(([choice, text]) => ({ value: choice, text }))}
        commit={commit}
      />
    );
  }
  return (
    <NumberBlank
      field={`assume.${key}`}
      unit={unit[units]}
      quantity={quantity}
      value={value as number | undefined}
      standard={standard as number | undefined}
      min={min}
      max={max}
      whole={key === 'labelRainEveryDays'}
      optional
      remark={blank && `Empty: ${blank}.`}
      commit={commit}
    />
  );
}
