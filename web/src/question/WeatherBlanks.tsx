import { useDates } from '../units/useDates.ts';
import { ChoiceBlank } from './ChoiceBlank.tsx';
import { DateBlank } from './DateBlank.tsx';
import { QUESTION_DEFAULTS } from './defaults.ts';
import { useForm } from './FormContext.ts';
import { NumberBlank } from './NumberBlank.tsx';
import { OutlookBlanks } from './OutlookBlanks.tsx';
import { GaugeBlank, IrrigationBlank } from './waterBlanks.tsx';

const GAPS = [
  { value: 'false', text: 'usual for the time of year' },
  { value: 'true', text: 'from neighbouring stations' },
];
const NEAREST = 'nearest';

/** The weather that a question reckons with. */
export function WeatherBlanks() {
  const dates = useDates();
  const { question: q, change, choices } = useForm();
  const d = QUESTION_DEFAULTS;
  return (
    <>
      <div class="blank-list">
        <DateBlank
          id="blank-asOf"
          field="asOf"
          value={q.asOf}
          optional
          echo={
            q.asOf
              ? `${dates.withWeekday(q.asOf)}; later days come from past years.`
              : 'Empty: planning, nothing is observed yet.'
          }
          commit={(asOf) => change({ asOf })}
        />
        <NumberBlank
          field="restOfSeasonRain"
          unit="% of each year’s own"
          quantity="fraction"
          value={q.restOfSeasonRain}
          standard={d.restOfSeasonRain}
          min={0}
          max={5}
          commit={(restOfSeasonRain) => change({ restOfSeasonRain })}
        />
        <NumberBlank
          field="baseFrom"
          unit="year"
          value={q.baseFrom}
          min={1700}
          max={2200}
          whole
          optional
          commit={(baseFrom) => change({ baseFrom })}
        />
        <NumberBlank
          field="baseTo"
          unit="year"
          value={q.baseTo}
          min={1700}
          max={2200}
          whole
          optional
          commit={(baseTo) => change({ baseTo })}
        />
        <ChoiceBlank
          field="fillFromNeighbours"
          value={`${q.fillFromNeighbours ?? d.fillFromNeighbours}`}
          options={GAPS}
          commit={(fill) => change({ fillFromNeighbours: fill === 'true' })}
        />
        <ChoiceBlank
          field="temperatureStation"
          value={q.temperatureStation ?? NEAREST}
          options={[
            { value: NEAREST, text: 'nearest fit station' },
            ...choices.stations.map(({ id, name }) => ({ value: id, text: name })),
          ]}
          commit={(id) => change({ temperatureStation: id === NEAREST ? undefined : id })}
        />
        <GaugeBlank
          amounts={(q.gauge ?? []).map(({ date, rainMm }) => ({ date, mm: rainMm }))}
          commit={(days) => change({ gauge: days.map(({ date, mm }) => ({ date, rainMm: mm })) })}
        />
        <IrrigationBlank amounts={q.irrigation ?? []} commit={(irrigation) => change({ irrigation })} />
      </div>
      <OutlookBlanks />
    </>
  );
}
