import { useEffect, useState } from 'preact/hooks';
import type { QuestionInput } from '../api/contract.ts';
import { Blank, blankIds } from './Blank.tsx';
import { DateBlank } from './DateBlank.tsx';
import { refusalOf, useForm } from './FormContext.ts';

type Outlook = NonNullable<QuestionInput['outlook']>;

const CHANCES = [
  { key: 'belowPercent', label: 'Below-normal rain' },
  { key: 'nearPercent', label: 'Near-normal rain' },
  { key: 'abovePercent', label: 'Above-normal rain' },
] as const;

const textsOf = (outlook: Outlook | undefined) =>
  CHANCES.map(({ key }) => (outlook === undefined ? '' : `${outlook[key]}`));

/** A seasonal outlook: three chances that add up to 100, taken over when the last of them is left. */
export function OutlookBlanks() {
  const { question, change, refusal } = useForm();
  const { outlook } = question;
  const [texts, setTexts] = useState(textsOf(outlook));
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => setTexts(textsOf(outlook)), [JSON.stringify(outlook)]);

  function leave(event: FocusEvent): void {
    const group = event.currentTarget as HTMLElement;
    if (group.contains(event.relatedTarget as Node | null)) return;
    const filled = texts.filter((text) => text.trim() !== '');
    if (filled.length === 0) {
      setProblem(null);
      if (outlook) change({ outlook: undefined });
      return;
    }
    const [belowPercent, nearPercent, abovePercent] = texts.map((text) => Number(text));
    const sum = belowPercent + nearPercent + abovePercent;
    if (filled.length < 3 || Math.abs(sum - 100) > 0.5) {
      setProblem(
        filled.length < 3
          ? 'Fill in all three chances, or none.'
          : `The three chances add up to ${Number.isNaN(sum) ? 'no number' : sum}; they must make 100.`,
      );
      return;
    }
    setProblem(null);
    if (texts.join() !== textsOf(outlook).join()) {
      change({ outlook: { ...outlook, belowPercent, nearPercent, abovePercent } });
    }
  }

  const said = problem ?? refusalOf(refusal, 'outlook');
  return (
    <fieldset class="blank-set">
      <legend>Seasonal rain outlook</legend>
      <div class="blank-three" onFocusOut={leave}>
        {CHANCES.map(({ key, label }, index) => {
          const id = `blank-outlook-${key}`;
          return (
            <Blank key={key} id={id} label={label} unit="%">
              <input
                {...blankIds(id, { unit: true, problem: said })}
                aria-describedby={said ? 'outlook-problem' : undefined}
                type="text"
                inputMode="decimal"
                autocomplete="off"
                value={texts[index]}
                onInput={(event) =>
                  setTexts(texts.map((text, at) => (at === index ? event.currentTarget.value : text)))
                }
              />
            </Blank>
          );
        })}
      </div>
      {said && (
        <p class="blank-problem" id="outlook-problem">
          {said}
        </p>
      )}
      {outlook && (
        <div class="blank-two">
          {(['from', 'to'] as const).map((end) => (
            <DateBlank
              key={end}
              id={`blank-outlook-${end}`}
              field={`outlook.${end}`}
              label={end === 'from' ? 'Outlook from' : 'Outlook to'}
              value={outlook[end]}
              optional
              commit={(date) => change({ outlook: { ...outlook, [end]: date } })}
            />
          ))}
        </div>
      )}
    </fieldset>
  );
}
