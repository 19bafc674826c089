import { Blank, blankIds } from '../question/Blank.tsx';
import { useForm } from '../question/FormContext.ts';
import type { Reading } from '../question/parseDate.ts';
import { useBlank } from '../question/useBlank.ts';

interface CropListBlankProps {
  readonly crops: readonly string[] | null;
  readonly commit: (crops: readonly string[] | null) => void;
}

/** The crops of the grid, written with commas between them; empty, all of the catalogue. */
export function CropListBlank({ crops, commit }: CropListBlankProps) {
  const { choices } = useForm();
  const { input, problem } = useBlank<readonly string[] | null>({
    field: 'crops',
    shown: crops?.join(', ') ?? '',
    read: (text) => readCrops(text, choices.crops),
    commit,
  });
  const remark = 'Empty: all of the catalogue. Else such as lentil, field pea.';
  return (
    <Blank id="blank-crops" lead="for" label="Crops" remark={remark} problem={problem}>
      <input
        {...blankIds('blank-crops', { remark, problem })}
        {...input}
        type="text"
        autocomplete="off"
        spellcheck={false}
        data-testid="crop-list"
      />
    </Blank>
  );
}

/** Reads a list of crops by name or by another of their names; names the first that the catalogue lacks. */
export function readCrops(
  text: string,
  known: readonly { readonly name: string; readonly aliases: readonly string[] }[],
): Reading<readonly string[] | null> {
  const written = text
    .split(',')
    .map((name) => name.trim())
    .filter(Boolean);
  const found = written.map((name) =>
    known.find((crop) =>
      [crop.name, ...crop.aliases].some((one) => one.toLowerCase() === name.toLowerCase()),
    ),
  );
  const lacking = written[found.indexOf(undefined)];
  if (lacking !== undefined) {
    return { problem: `The catalogue has no crop called “${lacking}”. Write its names with commas between.` };
  }
  const names = [...new Set(found.flatMap((crop) => crop?.name ?? []))];
  return { value: names.length === 0 ? null : names };
}
