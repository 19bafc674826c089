import { Term } from '../words/Term.tsx';
import { ChoiceBlank, type Option } from './ChoiceBlank.tsx';
import { daysBetween, sayFullDate, sayWeekday } from './calendar.ts';
import { DateBlank } from './DateBlank.tsx';
import { QUESTION_DEFAULTS } from './defaults.ts';
import { useForm } from './FormContext.ts';
import { NumberBlank } from './NumberBlank.tsx';

/** Blanks that several questions share; each leads up to its value with the words of its own sentence. */
interface Lead {
  readonly lead: string;
}

const named = (names: readonly string[]): Option[] => names.map((name) => ({ value: name, text: name }));
const ANOTHER = 'another, written in…';

export function AppliedOnBlank({ lead }: Lead) {
  const { question: q, change } = useForm();
  return (
    <DateBlank
      id="blank-appliedOn"
      field="appliedOn"
      lead={lead}
      label="Date of spraying"
      value={q.appliedOn}
      echo={q.appliedOn && sayFullDate(q.appliedOn)}
      testId="applied-on"
      commit={(appliedOn) => appliedOn && change({ appliedOn })}
    />
  );
}

export function ResidualBlank({ lead }: Lead) {
  const { question: q, choices, change } = useForm();
  return (
    <ChoiceBlank
      field="residual"
      lead={lead}
      label="Residual"
      value={q.residual}
      options={named(choices.residuals.map(({ name }) => name))}
      other={ANOTHER}
      commit={(residual) => change({ residual, interval: undefined, halfLifeDays: undefined })}
    />
  );
}

export function RateBlank({ lead }: Lead) {
  const { question: q, change } = useForm();
  return (
    <NumberBlank
      field="rateFraction"
      lead={lead}
      label="Rate"
      unit="% of the top label rate"
      quantity="fraction"
      value={q.rateFraction}
      standard={QUESTION_DEFAULTS.rateFraction}
      min={0}
      max={10}
      aboveMin
      commit={(rateFraction) => change({ rateFraction })}
    />
  );
}

export function CropBlank({ lead }: Lead) {
  const { question: q, choices, change } = useForm();
  return (
    <ChoiceBlank
      field="crop"
      lead={lead}
      label="Next crop"
      value={q.crop}
      options={named(choices.crops.map(({ name }) => name))}
      other={ANOTHER}
      commit={(crop) => change({ crop })}
    />
  );
}

export function PlantOnBlank({ lead }: Lead) {
  const { question: q, change } = useForm();
  return (
    <DateBlank
      id="blank-plantOn"
      field="plantOn"
      lead={lead}
      label="Planting date"
      value={q.plantOn}
      echo={
        q.plantOn &&
        q.appliedOn &&
        `${sayWeekday(q.plantOn)}, ${daysBetween(q.appliedOn, q.plantOn)} days after spraying`
      }
      testId="plant-on"
      commit={(plantOn) => plantOn && change({ plantOn })}
    />
  );
}

export function SoilBlank({ lead }: Lead) {
  const { question: q, choices, change } = useForm();
  return (
    <ChoiceBlank
      field="soilClass"
      lead={lead}
      label="Soil"
      value={q.soilClass ?? 'loam'}
      options={named(choices.soilClasses)}
      commit={(soilClass) => change({ soilClass: soilClass as typeof q.soilClass })}
    />
  );
}

export function StationBlank({ lead }: Lead) {
  const { question: q, choices, change } = useForm();
  const station = choices.stations.find(({ id }) => id === q.station);
  const years = station && `${station.firstDate.slice(0, 4)} to ${station.lastDate.slice(0, 4)}`;
  return (
    <ChoiceBlank
      field="station"
      lead={lead}
      label="Weather record"
      value={q.station}
      options={choices.stations.map(({ id, name }) => ({ value: id, text: name }))}
      remark={station && (station.invented ? `An invented record, ${years}` : `Record ${years}`)}
      commit={(id) => change({ station: id })}
    />
  );
}

export function OddsLimitBlank({ lead }: Lead) {
  const { question: q, change } = useForm();
  return (
    <NumberBlank
      field="oddsLimit"
      lead={lead}
      label="Odds limit"
      unit="in 20"
      quantity="twentieths"
      value={q.oddsLimit}
      standard={QUESTION_DEFAULTS.oddsLimit}
      min={0}
      max={0.999}
      aboveMin
      remark={<Term name="odds limit">What is an odds limit?</Term>}
      commit={(oddsLimit) => change({ oddsLimit })}
    />
  );
}
