import { CountryBlank, GroundBlanks, SoilBlanks } from '../question/groundBlanks.tsx';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { StationBlank } from '../question/sharedBlanks.tsx';
import { TextBlank } from '../question/TextBlank.tsx';
import { areaUnit } from '../units/units.ts';
import { PointBlank } from './PointBlank.tsx';
import type { PartProps } from './parts.ts';

/** Where the field lies and what its soil is. */
export function PlaceAndSoil({ record, change, units }: PartProps) {
  return (
    <div class="blank-grid">
      <TextBlank
        field="name"
        label="Name of the field"
        value={record.name}
        most={120}
        needed="A field needs a name, such as Home quarter."
        testId="field-name"
        commit={(name) => change({ name })}
      />
      <TextBlank field="farm" value={record.farm} most={120} commit={(farm) => change({ farm })} />
      <NumberBlank
        field="areaHa"
        unit={areaUnit(units)}
        quantity="area"
        value={record.areaHa ?? undefined}
        min={0}
        max={100_000}
        aboveMin
        optional
        commit={(areaHa) => change({ areaHa: areaHa ?? null })}
      />
      <CountryBlank />
      <PointBlank place={record.place} commit={(place) => change({ place })} />
      <StationBlank remark={stationRemark(record.place)} />
      <SoilBlanks />
      <GroundBlanks />
      <TextBlank
        field="phNote"
        value={record.phNote}
        most={500}
        rows={2}
        commit={(phNote) => change({ phNote })}
      />
      <TextBlank field="note" value={record.note} most={2000} rows={2} commit={(note) => change({ note })} />
    </div>
  );
}

/** Where stations near the field are found. */
function stationRemark(place: PartProps['record']['place']) {
  const near = place === null ? '' : `?at=${place.latitudeDeg},${place.longitudeDeg}`;
  return (
    <>
      Its rain stands for the field’s. <a href={`/weather${near}`}>Find one near the field</a>
    </>
  );
}
