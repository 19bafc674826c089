import type { FieldRecord } from '../api/contract.ts';
import { Blank, blankIds } from '../question/Blank.tsx';
import { useBlank } from '../question/useBlank.ts';
import { parsePlace } from '../weather/parsePlace.ts';
import { sayPoint } from '../weather/weatherAddress.ts';

type Place = FieldRecord['place'];

/** Latitude and longitude in one blank, said back with the points of the compass. */
export function PointBlank({ place, commit }: { place: Place; commit: (place: Place) => void }) {
  const { input, problem } = useBlank<Place>({
    field: 'place',
    shown: place === null ? '' : `${place.latitudeDeg}, ${place.longitudeDeg}`,
    read: (text) => {
      if (text.trim() === '') return { value: null };
      const read = parsePlace(text);
      if ('problem' in read) return read;
      const { value } = read;
      return value.kind === 'point'
        ? { value: { latitudeDeg: value.latitudeDeg, longitudeDeg: value.longitudeDeg } }
        : { problem: 'Write latitude and longitude, such as 45.68, -111.05; west is negative.' };
    },
    commit,
  });
  const remark =
    place === null
      ? 'Such as 45.68, -111.05; west is negative.'
      : sayPoint(place.latitudeDeg, place.longitudeDeg);
  return (
    <Blank id="blank-place" label="Latitude and longitude" remark={remark} problem={problem}>
      <input
        {...blankIds('blank-place', { remark, problem })}
        {...input}
        type="text"
        autocomplete="off"
        spellcheck={false}
      />
    </Blank>
  );
}
