import { NumberBlank } from '../question/NumberBlank.tsx';
import { TextBlank } from '../question/TextBlank.tsx';
import type { Treatment } from './Treatments.tsx';

type Zone = Treatment['zones'][number];

interface ZoneBlanksProps {
  readonly field: string;
  readonly zones: readonly Zone[];
  readonly commit: (zones: Zone[]) => void;
}

const MOST_ZONES = 6;
const USUAL: Zone = { name: 'turn rows', overlapFactor: 2 };

/** Parts of the field that got more than the rest, such as turn rows. */
export function ZoneBlanks({ field, zones, commit }: ZoneBlanksProps) {
  const set = (index: number, part: Partial<Zone>) =>
    commit(zones.map((zone, at) => (at === index ? { ...zone, ...part } : zone)));
  return (
    <div class="wide zones">
      {zones.map((zone, index) => (
        <div class="zone" key={`${index} of ${zones.length}`}>
          <TextBlank
            field={`${field}.${index}.name`}
            label={`Zone ${index + 1}`}
            value={zone.name}
            most={60}
            needed="A zone needs a name, such as turn rows."
            commit={(name) => set(index, { name })}
          />
          <NumberBlank
            field={`${field}.${index}.overlapFactor`}
            label="Overlap there"
            unit="times the dose"
            value={zone.overlapFactor}
            min={1}
            max={5}
            commit={(overlapFactor) => set(index, { overlapFactor: overlapFactor ?? 1 })}
          />
          <button type="button" class="quiet" onClick={() => commit(zones.filter((_, at) => at !== index))}>
            Remove zone {index + 1}
          </button>
        </div>
      ))}
      {zones.length < MOST_ZONES && (
        <button type="button" class="quiet" onClick={() => commit([...zones, USUAL])}>
          Add a zone of overlaps
        </button>
      )}
    </div>
  );
}
