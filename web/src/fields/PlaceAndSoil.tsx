import type { Choices } from '../api/contract.ts';
import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { QUESTION_DEFAULTS } from '../question/defaults.ts';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { TextBlank } from '../question/TextBlank.tsx';
import { areaUnit, type Units } from '../units/units.ts';
import { PointBlank } from './PointBlank.tsx';
import type { PartProps } from './parts.ts';

const COUNTRIES = [
  { value: 'US', text: 'United States' },
  { value: 'CA', text: 'Canada' },
];
const BY_SAND = 'by sand and clay';
const NO_STATION = '';

/** Where the field lies and what its soil is. */
export function PlaceAndSoil({
  record,
  change,
  choices,
  units,
}: PartProps & { choices: Choices | null; units: Units }) {
  const stations = choices?.stations ?? [];
  const bySand = record.sandPercent !== undefined || record.clayPercent !== undefined;
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
      <TextBlank
        field="farm"
        label="Farm"
        value={record.farm}
        most={120}
        commit={(farm) => change({ farm })}
      />
      <NumberBlank
        field="areaHa"
        label="Size"
        unit={areaUnit(units)}
        quantity="area"
        value={record.areaHa ?? undefined}
        min={0}
        max={100_000}
        aboveMin
        optional
        commit={(areaHa) => change({ areaHa: areaHa ?? null })}
      />
      <ChoiceBlank
        field="country"
        label="Country, for the catalogue’s intervals"
        value={record.country}
        options={COUNTRIES}
        commit={(country) => change({ country: country as typeof record.country })}
      />
      <PointBlank place={record.place} commit={(place) => change({ place })} />
      <ChoiceBlank
        field="station"
        label="Weather station"
        value={record.station ?? NO_STATION}
        options={stations.map(({ id, name }) => ({ value: id, text: name }))}
        other="another, by its id…"
        remark={stationRemark(record.place)}
        commit={(station) => change({ station })}
      />
      <ChoiceBlank
        field="soilClass"
        label="Soil"
        value={bySand ? BY_SAND : (record.soilClass ?? 'loam')}
        options={[...(choices?.soilClasses ?? ['loam']), BY_SAND].map((name) => ({
          value: name,
          text: name,
        }))}
        commit={(soil) =>
          soil === BY_SAND
            ? change({ soilClass: undefined, sandPercent: 40, clayPercent: 20 })
            : change({
                soilClass: soil as typeof record.soilClass,
                sandPercent: undefined,
                clayPercent: undefined,
              })
        }
      />
      {bySand && (
        <>
          <NumberBlank
            field="sandPercent"
            label="Sand"
            unit="%"
            value={record.sandPercent}
            min={0}
            max={100}
            commit={(sandPercent) => change({ sandPercent })}
          />
          <NumberBlank
            field="clayPercent"
            label="Clay"
            unit="%"
            value={record.clayPercent}
            min={0}
            max={60}
            commit={(clayPercent) => change({ clayPercent })}
          />
        </>
      )}
      <NumberBlank
        field="organicMatterPercent"
        label="Organic matter, 2 % where nothing is given"
        unit="%"
        value={record.organicMatterPercent}
        min={0}
        max={8}
        optional
        commit={(organicMatterPercent) => change({ organicMatterPercent })}
      />
      <NumberBlank
        field="coverFraction"
        label="Ground covered by straw or dead weeds"
        unit="%"
        quantity="fraction"
        value={record.coverFraction}
        min={0}
        max={1}
        commit={(given) => change({ coverFraction: given ?? QUESTION_DEFAULTS.coverFraction })}
      />
      <NumberBlank
        field="soilPh"
        label="Soil pH in water"
        unit="pH"
        value={record.soilPh}
        min={3}
        max={11}
        optional
        commit={(soilPh) => change({ soilPh })}
      />
      <TextBlank
        field="phNote"
        label="What is known of the pH: history, zones, liming"
        value={record.phNote}
        most={500}
        rows={2}
        commit={(phNote) => change({ phNote })}
      />
      <TextBlank
        field="note"
        label="Remark"
        value={record.note}
        most={2000}
        rows={2}
        commit={(note) => change({ note })}
      />
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
