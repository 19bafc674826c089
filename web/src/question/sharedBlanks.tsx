import type { ComponentChildren } from 'preact';
import type { QuestionInput } from '../api/contract.ts';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';
import { ChoiceBlank, type Option } from './ChoiceBlank.tsx';
import { daysBetween } from './calendar.ts';
import { DateBlank } from './DateBlank.tsx';
import { QUESTION_DEFAULTS } from './defaults.ts';
import { NumberBlank } from './NumberBlank.tsx';
import { useSubject } from './subject.tsx';

/** Blanks that lead up to their value with the words of a sentence, where they stand in one. */
export interface Lead {
  readonly lead: string;
}

export const named = (names: readonly string[]): Option[] =>
  names.map((name) => ({ value: name, text: name }));

export function AppliedOnBlank({ lead }: Partial<Lead>) {
  const dates = useDates();
  const { of, set, at } = useSubject<Pick<QuestionInput, 'appliedOn'>>();
  return (
    <DateBlank
      id={`blank-${at('appliedOn')}`}
      field={at('appliedOn')}
      lead={lead}
      value={of.appliedOn}
      echo={of.appliedOn && dates.withWeekday(of.appliedOn)}
      testId={lead === undefined ? undefined : 'applied-on'}
      commit={(appliedOn) => appliedOn && set({ appliedOn })}
    />
  );
}

export function RateBlank({ lead }: Partial<Lead>) {
  const { of, set, at } = useSubject<Pick<QuestionInput, 'rateFraction'>>();
  return (
    <NumberBlank
      field={at('rateFraction')}
      lead={lead}
      unit="% of the top label rate"
      quantity="fraction"
      value={of.rateFraction}
      standard={QUESTION_DEFAULTS.rateFraction}
      min={0}
      max={10}
      aboveMin
      commit={(given) => set({ rateFraction: given ?? QUESTION_DEFAULTS.rateFraction })}
    />
  );
}

export function CropBlank({ lead }: Partial<Lead>) {
  const { of, set, at, choices } = useSubject<Pick<QuestionInput, 'crop'>>();
  return (
    <ChoiceBlank
      field={at('crop')}
      lead={lead}
      value={of.crop}
      options={named(choices.crops.map(({ name }) => name))}
      other="another, written in…"
      commit={(crop) => set({ crop })}
    />
  );
}

/** @param appliedOn day of spraying that the date is told against; none where nothing is sprayed yet */
export function PlantOnBlank({ lead, appliedOn }: Partial<Lead> & { appliedOn: string | undefined }) {
  const dates = useDates();
  const { of, set, at } = useSubject<Pick<QuestionInput, 'plantOn'>>();
  const { plantOn } = of;
  const since = appliedOn && plantOn && `, ${daysBetween(appliedOn, plantOn)} days after spraying`;
  return (
    <DateBlank
      id={`blank-${at('plantOn')}`}
      field={at('plantOn')}
      lead={lead}
      value={plantOn}
      echo={plantOn && `${dates.weekday(plantOn)}${since ?? ''}`}
      testId={lead === undefined ? undefined : 'plant-on'}
      commit={(date) => date && set({ plantOn: date })}
    />
  );
}

const STAND_USES = [
  { value: 'harvested', text: 'harvested' },
  { value: 'grazed', text: 'grazed or cut for feed' },
  { value: 'cover only', text: 'cover only, nobody eats it' },
];

export function StandUseBlank() {
  const { of, set, at } = useSubject<Pick<QuestionInput, 'standUse'>>();
  const [usual] = STAND_USES;
  return (
    <ChoiceBlank
      field={at('standUse')}
      value={of.standUse ?? usual.value}
      options={STAND_USES}
      remark="A label may let a crop in for its safety and keep it from being eaten for longer."
      commit={(use) =>
        set({ standUse: use === usual.value ? undefined : (use as QuestionInput['standUse']) })
      }
    />
  );
}

/** @param remark said below in place of the years of the record */
export function StationBlank({ lead, remark }: Partial<Lead> & { remark?: ComponentChildren }) {
  const { of, set, at, choices } = useSubject<{ station: string | null }>();
  const station = choices.stations.find(({ id }) => id === of.station);
  const years = station && `${station.firstDate.slice(0, 4)} to ${station.lastDate.slice(0, 4)}`;
  return (
    <ChoiceBlank
      field={at('station')}
      lead={lead}
      value={of.station ?? ''}
      options={choices.stations.map(({ id, name }) => ({ value: id, text: name }))}
      other={lead === undefined ? 'another, by its id…' : undefined}
      remark={remark ?? (station && (station.invented ? `An invented record, ${years}` : `Record ${years}`))}
      commit={(id) => set({ station: id })}
    />
  );
}

export function OddsLimitBlank({ lead }: Partial<Lead>) {
  const { of, set, at } = useSubject<Pick<QuestionInput, 'oddsLimit'>>();
  return (
    <NumberBlank
      field={at('oddsLimit')}
      lead={lead}
      unit="in 20"
      quantity="twentieths"
      value={of.oddsLimit}
      standard={QUESTION_DEFAULTS.oddsLimit}
      min={0}
      max={0.999}
      aboveMin
      remark={<Term name="odds limit">What is an odds limit?</Term>}
      commit={(given) => set({ oddsLimit: given ?? QUESTION_DEFAULTS.oddsLimit })}
    />
  );
}
