import { ChoiceBlank } from './ChoiceBlank.tsx';
import { QUESTION_DEFAULTS } from './defaults.ts';
import { useForm } from './FormContext.ts';
import { NumberBlank } from './NumberBlank.tsx';

const COUNTRIES = [
  { value: 'US', text: 'United States' },
  { value: 'CA', text: 'Canada' },
];

/** What a question can say about the field beyond its soil class. */
export function FieldBlanks() {
  const { question: q, change, units } = useForm();
  const d = QUESTION_DEFAULTS;
  const height = units === 'us' ? 'ft' : 'm';
  return (
    <div class="blank-list">
      <ChoiceBlank
        field="country"
        label="Country, for the catalogue’s intervals"
        value={q.country ?? d.country}
        options={COUNTRIES}
        commit={(country) => change({ country: country as typeof q.country })}
      />
      <NumberBlank
        field="organicMatterPercent"
        label="Organic matter, 2 % where nothing is given"
        unit="%"
        value={q.organicMatterPercent}
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
        value={q.coverFraction}
        standard={d.coverFraction}
        min={0}
        max={1}
        commit={(coverFraction) => change({ coverFraction })}
      />
      <NumberBlank
        field="soilPh"
        label="Soil pH in water"
        unit="pH"
        value={q.soilPh}
        min={3}
        max={11}
        optional
        commit={(soilPh) => change({ soilPh })}
      />
      <NumberBlank
        field="sandPercent"
        label="Sand, instead of a soil class"
        unit="%"
        value={q.sandPercent}
        min={0}
        max={100}
        optional
        commit={(sandPercent) => change({ sandPercent })}
      />
      <NumberBlank
        field="clayPercent"
        label="Clay, instead of a soil class"
        unit="%"
        value={q.clayPercent}
        min={0}
        max={60}
        optional
        commit={(clayPercent) => change({ clayPercent })}
      />
      <NumberBlank
        field="elevationM"
        label="Height of the station, if the record lacks it"
        unit={height}
        quantity="height"
        value={q.elevationM}
        min={-430}
        max={6000}
        optional
        commit={(elevationM) => change({ elevationM })}
      />
      <NumberBlank
        field="latitudeDeg"
        label="Latitude, if the record lacks it"
        unit="°"
        value={q.latitudeDeg}
        min={-90}
        max={90}
        optional
        commit={(latitudeDeg) => change({ latitudeDeg })}
      />
    </div>
  );
}
