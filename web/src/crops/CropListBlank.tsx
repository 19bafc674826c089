import { Blank, blankIds } from '../question/Blank.tsx';
import { useForm } from '../question/FormContext.ts';
import { useBlank } from '../question/useBlank.ts';
import { readCrops } from './readCrops.ts';

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
