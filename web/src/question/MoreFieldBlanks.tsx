import { useForm } from './FormContext.ts';
import { CountryBlank, GroundBlanks } from './groundBlanks.tsx';
import { NumberBlank } from './NumberBlank.tsx';
import { StandUseBlank } from './sharedBlanks.tsx';

/** What a question can say about the field beyond its soil class. */
export function MoreFieldBlanks() {
  const { question: q, change, units } = useForm();
  return (
    <div class="blank-list">
      <StandUseBlank />
      <CountryBlank />
      <GroundBlanks />
      <NumberBlank
        field="elevationM"
        unit={units === 'us' ? 'ft' : 'm'}
        quantity="height"
        value={q.elevationM}
        min={-430}
        max={6000}
        optional
        commit={(elevationM) => change({ elevationM })}
      />
      <NumberBlank
        field="latitudeDeg"
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
