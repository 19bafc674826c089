import { NumberBlank } from './NumberBlank.tsx';
import { useSubject } from './subject.tsx';
import { TextBlank } from './TextBlank.tsx';
import type { Zone } from './treatmentText.ts';

const MOST_ZONES = 6;
const USUAL: Zone = { name: 'turn rows', overlapFactor: 2 };

/** Parts of the field that got more than the rest, such as turn rows. */
export function ZoneBlanks() {
  const { of, set, at, forgetTyped } = useSubject<{ zones?: Zone[] }>();
  const zones = of.zones ?? [];
  const commit = (index: number, part: Partial<Zone>) =>
    set({ zones: zones.map((zone, place) => (place === index ? { ...zone, ...part } : zone)) });
  return (
    <div class="wide zones">
      {zones.map((zone, index) => (
        <div class="zone" key={`${index} of ${zones.length}`}>
          <TextBlank
            field={at(`zones.${index}.name`)}
            label={`Zone ${index + 1}`}
            value={zone.name}
            most={60}
            needed="A zone needs a name, such as turn rows."
            commit={(name) => commit(index, { name })}
          />
          <NumberBlank
            field={at(`zones.${index}.overlapFactor`)}
            label="Overlap there"
            unit="times the dose"
            value={zone.overlapFactor}
            min={1}
            max={5}
            commit={(overlapFactor) => commit(index, { overlapFactor: overlapFactor ?? 1 })}
          />
          <button
            type="button"
            class="quiet"
            onClick={() => {
              forgetTyped(at('zones.'));
              set({ zones: zones.filter((_, place) => place !== index) });
            }}
          >
            Remove zone {index + 1}
          </button>
        </div>
      ))}
      {zones.length < MOST_ZONES && (
        <button
          type="button"
          class="quiet"
          data-testid="add-zone"
          onClick={() => set({ zones: [...zones, USUAL] })}
        >
          Add a zone of overlaps
        </button>
      )}
    </div>
  );
}
