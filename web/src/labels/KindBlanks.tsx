import type { ComponentChildren } from 'preact';
import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { useSubject } from '../question/subject.tsx';
import { TextBlank } from '../question/TextBlank.tsx';
import { doseUnit, rainUnit } from '../units/units.ts';
import { type ClauseOf, type Kind, USUAL_MM } from './clauseKinds.ts';

const WATERS = [
  { value: 'rain', text: 'rain alone' },
  { value: 'rain and irrigation', text: 'rain and irrigation' },
];
const UNTIL = [
  { value: 'planting', text: 'planting' },
  { value: 'interval end', text: 'the end of the interval' },
  { value: 'spring end', text: 'the end of spring' },
];
const BY = [{ value: 'spring end', text: 'the end of spring' }];
const YES_NO = [
  { value: 'no', text: 'always' },
  { value: 'yes', text: 'on dry soil only' },
];
const ROLES = [
  { value: 'required', text: 'must pass in any case' },
  { value: 'alternative', text: 'may stand in for the other conditions' },
];
const TEXTURES = [
  { value: 'medium fine', text: 'medium and fine soil, not coarse' },
  { value: 'coarse medium', text: 'coarse and medium soil, not fine' },
  { value: 'coarse', text: 'coarse soil: sand to sandy loam' },
  { value: 'medium', text: 'medium soil: loam, silt and sandy clay loam' },
  { value: 'fine', text: 'fine soil: clay loam to clay' },
  { value: 'coarse fine', text: 'coarse and fine soil, not medium' },
];
const MONTH_DAY = 'another day, as 06-15…';

/** What a condition of one kind says beyond what holds where it fails. */
export function KindBlanks({ kind }: { kind: Kind }) {
  return BLANKS[kind]();
}

const BLANKS: { readonly [K in Kind]: () => ComponentChildren } = {
  water: () => (
    <>
      <LeastWater />
      <Counts />
      <Window />
    </>
  ),
  startingRain: () => (
    <>
      <LeastWater />
      <DrySoil />
    </>
  ),
  stormGuard: () => (
    <>
      <LeastWater />
      <ByDay />
    </>
  ),
  annualRain: () => (
    <>
      <LeastWater />
      <Counts />
    </>
  ),
  soilPh: () => <PhBand />,
  organicMatter: () => <LeastOrganicMatter />,
  soilTexture: () => <Textures />,
  tillage: () => null,
  zone: () => <ZoneWords />,
  rate: () => <RateBand />,
  bioassay: () => <Role />,
};

function LeastWater() {
  const { of, set, at, units } = useSubject<{ minMm: number }>();
  return (
    <NumberBlank
      field={at('minMm')}
      unit={rainUnit(units)}
      quantity="rain"
      value={of.minMm}
      min={0}
      max={5000}
      aboveMin
      commit={(minMm) => set({ minMm: minMm ?? USUAL_MM })}
    />
  );
}

type Counting = ClauseOf<'water'>['counts'];

function Counts() {
  const { of, set, at } = useSubject<{ counts: Counting }>();
  return (
    <ChoiceBlank
      field={at('counts')}
      value={of.counts}
      options={WATERS}
      commit={(counts) => set({ counts: counts as Counting })}
    />
  );
}

function Window() {
  const { of, set, at } = useSubject<ClauseOf<'water'>>();
  const { from, to } = of.window;
  return (
    <ChoiceBlank
      field={at('window')}
      label={from === 'application' ? 'From application to' : `From ${from} to`}
      value={to}
      options={to === 'unknown' ? [...UNTIL, { value: to, text: 'a day that could not be read' }] : UNTIL}
      other={MONTH_DAY}
      commit={(day) => set({ window: { from, to: day as typeof to } })}
    />
  );
}

function ByDay() {
  const { of, set, at } = useSubject<ClauseOf<'stormGuard'>>();
  return (
    <ChoiceBlank
      field={at('by')}
      value={of.by}
      options={BY}
      other={MONTH_DAY}
      commit={(by) => set({ by: by as typeof of.by })}
    />
  );
}

function DrySoil() {
  const { of, set, at } = useSubject<ClauseOf<'startingRain'>>();
  return (
    <ChoiceBlank
      field={at('onDrySoilOnly')}
      value={of.onDrySoilOnly ? 'yes' : 'no'}
      options={YES_NO}
      commit={(only) => set({ onDrySoilOnly: only === 'yes' })}
    />
  );
}

function PhBand() {
  const { of, set, at } = useSubject<ClauseOf<'soilPh'>>();
  return (
    <>
      <NumberBlank
        field={at('atLeast')}
        unit="pH"
        value={of.atLeast}
        min={3}
        max={11}
        optional
        commit={(atLeast) => set({ atLeast })}
      />
      <NumberBlank
        field={at('below')}
        unit="pH"
        value={of.below}
        min={3}
        max={11}
        optional
        commit={(below) => set({ below })}
      />
    </>
  );
}

function LeastOrganicMatter() {
  const { of, set, at } = useSubject<ClauseOf<'organicMatter'>>();
  return (
    <NumberBlank
      field={at('minPercent')}
      unit="%"
      value={of.minPercent}
      min={0}
      max={20}
      aboveMin
      commit={(minPercent) => minPercent !== undefined && set({ minPercent })}
    />
  );
}

function Textures() {
  const { of, set, at } = useSubject<ClauseOf<'soilTexture'>>();
  const value = TEXTURES.find(({ value: one }) => sameWords(one.split(' '), of.groups))?.value ?? '';
  return (
    <ChoiceBlank
      field={at('groups')}
      value={value}
      options={TEXTURES}
      commit={(words) => set({ groups: words.split(' ') as typeof of.groups })}
    />
  );
}

const sameWords = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((word) => other.includes(word));

function ZoneWords() {
  const { of, set, at } = useSubject<ClauseOf<'zone'>>();
  return (
    <TextBlank
      field={at('words')}
      value={of.words}
      most={300}
      needed="Write it as the label has it."
      commit={(words) => set({ words })}
    />
  );
}

function RateBand() {
  const { of, set, at, units } = useSubject<ClauseOf<'rate'>>();
  const end = (key: 'fromGramsPerHa' | 'toGramsPerHa', label: string) => (
    <NumberBlank
      field={at(key)}
      label={label}
      unit={doseUnit(units)}
      quantity="rate"
      value={of[key]}
      min={0}
      max={20_000}
      aboveMin
      optional
      commit={(gramsPerHa) => set({ [key]: gramsPerHa })}
    />
  );
  return (
    <>
      {end('fromGramsPerHa', 'Active from')}
      {end('toGramsPerHa', 'Active up to')}
    </>
  );
}

function Role() {
  const { of, set, at } = useSubject<ClauseOf<'bioassay'>>();
  return (
    <ChoiceBlank
      field={at('role')}
      value={of.role}
      options={ROLES}
      commit={(role) => set({ role: role as typeof of.role })}
    />
  );
}
