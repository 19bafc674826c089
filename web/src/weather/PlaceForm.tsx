import { useLayoutEffect, useState } from 'preact/hooks';
import type { Problem } from '../api/contract.ts';
import { Blank, blankIds } from '../question/Blank.tsx';
import { readNumber } from '../question/readNumber.ts';
import { heightUnit, shownNumber, type Units } from '../units/units.ts';
import { parsePlace } from './parsePlace.ts';
import { pointText, type SoughtPlace, sayPoint } from './weatherAddress.ts';

interface PlaceFormProps {
  readonly place: SoughtPlace | null;
  readonly elevationM: number | null;
  readonly units: Units;
  /** Why the server found nothing there. */
  readonly refusal: Problem | null;
  readonly choose: (place: SoughtPlace, elevationM: number | null) => void;
}

const textOf = (place: SoughtPlace | null) =>
  place === null ? '' : place.kind === 'county' ? place.county : pointText(place);

/** Where the field lies: a county or a point, and its height where it is known. */
export function PlaceForm({ place, elevationM, units, refusal, choose }: PlaceFormProps) {
  const shown = textOf(place);
  const shownHeight = elevationM === null ? '' : shownNumber(elevationM, 'height', units);
  const [text, setText] = useState(shown);
  const [height, setHeight] = useState(shownHeight);
  const [problems, setProblems] = useState<{ place?: string; height?: string }>({});
  useLayoutEffect(() => {
    setText(shown);
    setProblems({});
  }, [shown]);
  useLayoutEffect(() => setHeight(shownHeight), [shownHeight]);

  function find(event: Event): void {
    event.preventDefault();
    const sought = parsePlace(text);
    const high = readNumber(height, { quantity: 'height', units, optional: true, min: -500, max: 9000 });
    setProblems({
      ...('problem' in sought && { place: sought.problem }),
      ...('problem' in high && { height: high.problem }),
    });
    if ('value' in sought && 'value' in high) choose(sought.value, high.value ?? null);
  }

  const choices = namesIn(refusal);
  const said =
    refusal &&
    (choices.length > 0
      ? refusal.message.replace(/:.*$/s, '. Which?')
      : `${refusal.message} ${refusal.hint}`);
  const problem = problems.place ?? (text === shown ? said : null);
  const remark =
    place?.kind === 'point' && text === shown
      ? sayPoint(place.latitudeDeg, place.longitudeDeg)
      : 'Such as Gallatin, MT or 45.68, -111.05; west is negative.';
  const unit = heightUnit(units);
  const heightRemark = 'If you know it: stations at a like height are preferred.';
  return (
    <form class="blank-list" onSubmit={find} noValidate>
      <Blank id="sought-place" label="County, or latitude and longitude" remark={remark} problem={problem}>
        <input
          {...blankIds('sought-place', { remark, problem })}
          type="text"
          autocomplete="off"
          spellcheck={false}
          data-testid="place"
          value={text}
          onInput={({ currentTarget }) => setText(currentTarget.value)}
        />
      </Blank>
      {choices.length > 0 && text === shown && (
        <div class="offers">
          {choices.map((county) => (
            <button
              key={county}
              type="button"
              class="small-button"
              onClick={() => choose({ kind: 'county', county }, elevationM)}
            >
              {county}
            </button>
          ))}
        </div>
      )}
      <Blank
        id="sought-height"
        label="Height of the field"
        unit={unit}
        remark={heightRemark}
        problem={problems.height}
      >
        <input
          {...blankIds('sought-height', { unit, remark: heightRemark, problem: problems.height })}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={height}
          onInput={({ currentTarget }) => setHeight(currentTarget.value)}
        />
      </Blank>
      <button type="submit" class="button">
        Find stations
      </button>
    </form>
  );
}

/** Counties offered where a name means several; more than any name has in the country. */
const MOST_OFFERS = 40;

/** Counties that a refusal offers instead, by their states. */
function namesIn(refusal: Problem | null): readonly string[] {
  const { choices, nearest } = refusal?.details ?? {};
  const names = Array.isArray(choices) ? choices : Array.isArray(nearest) ? nearest : [];
  return names
    .filter((name): name is string => typeof name === 'string')
    .toSorted()
    .slice(0, MOST_OFFERS);
}
