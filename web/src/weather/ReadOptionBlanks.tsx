import type { ReadOptions } from '../api/contract.ts';
import { Blank, blankIds } from '../question/Blank.tsx';

interface ReadOptionBlanksProps {
  readonly options: ReadOptions;
  readonly change: (options: ReadOptions) => void;
}

const UNITS = [
  ['', 'told from the file'],
  ['us', 'inches and °F'],
  ['metric', 'mm and °C'],
  ['tenths', 'tenths of mm and °C'],
] as const;
const DATES = [
  ['', 'told from the file'],
  ['month-first', 'month first: 5/10/2027 is May 10'],
  ['day-first', 'day first: 5/10/2027 is October 5'],
] as const;

/** What the user knows of files that do not say it themselves; holds for the files sent from now on. */
export function ReadOptionBlanks({ options, change }: ReadOptionBlanksProps) {
  const choice = (key: 'units' | 'dates', label: string, entries: readonly (readonly [string, string])[]) => (
    <Blank id={`read-${key}`} label={label}>
      <select
        {...blankIds(`read-${key}`, {})}
        value={options[key] ?? ''}
        onChange={({ currentTarget: { value } }) =>
          change({ ...without(options, key), ...(value && { [key]: value }) })
        }
      >
        {entries.map(([value, text]) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
    </Blank>
  );
  const remark = 'Only for files that hold none. Letters, digits, - and _.';
  return (
    <div class="blank-list">
      {choice('units', 'Units of the values', UNITS)}
      {choice('dates', 'Dates with slashes', DATES)}
      <Blank id="read-station" label="Station id" remark={remark}>
        <input
          {...blankIds('read-station', { remark })}
          type="text"
          autocomplete="off"
          spellcheck={false}
          pattern="[\w\-]+"
          value={options.station ?? ''}
          onChange={({ currentTarget: { value } }) =>
            change({ ...without(options, 'station'), ...(value.trim() && { station: value.trim() }) })
          }
        />
      </Blank>
    </div>
  );
}

function without(options: ReadOptions, key: keyof ReadOptions): ReadOptions {
  const { [key]: _, ...rest } = options;
  return rest;
}
