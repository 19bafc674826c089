import type { QuestionInput, RegionInput } from '../api/contract.ts';
import { decodeAddress, encodeAddress } from '../question/address.ts';
import { addToSearch, splitSearch } from '../question/splitSearch.ts';
import type { Codec } from '../shell/useHeldAddress.ts';
import { MEASURES, type Measure } from './measures.ts';
import { type Box, readBox, readStates, sayBox } from './readWhere.ts';
import { readSoils, type StationSoils, saySoils } from './stationSoils.ts';

/** What the place asks: the field’s question, where it is asked, and how the answer is looked at. */
export interface RegionAsked {
  /** Its station and all that belongs to one field are only brought out, not asked about. */
  readonly question: QuestionInput;
  readonly states: readonly string[] | null;
  readonly box: Box | null;
  /** Soils of single stations; the others have the question’s. */
  readonly soils: StationSoils | null;
  /** What the map shows; null for what suggests itself. */
  readonly show: Measure | null;
  /** The station whose numbers are read out. */
  readonly pick: string | null;
}

const EXTRAS = ['states', 'box', 'soils', 'show', 'pick'];

export const regionFrom = (question: QuestionInput): RegionAsked => ({
  question,
  states: null,
  box: null,
  soils: null,
  show: null,
  pick: null,
});

export const REGION: Codec<RegionAsked> = {
  path: '/region',
  encode({ question, states, box, soils, show, pick }, units) {
    return addToSearch(encodeAddress(question, units), {
      states: states?.join(','),
      box: box === null ? undefined : sayBox(box).replaceAll(' ', ''),
      soils: soils === null ? undefined : saySoils(soils, '~').replaceAll(', ', ','),
      show: show ?? undefined,
      pick: pick ?? undefined,
    });
  },
  decode(search) {
    const { extras, search: rest } = splitSearch(search, EXTRAS);
    const { question, units, problem } = decodeAddress(rest);
    if (question === null) return { value: null, units, problem };
    const states = readStates(extras.states ?? '');
    const box = readBox(extras.box ?? '');
    const soils = readSoils((extras.soils ?? '').replaceAll('~', '\n'));
    const wrong = [states, box, soils].find((read) => 'problem' in read);
    return {
      value: {
        question,
        states: 'value' in states ? states.value : null,
        box: 'value' in box ? box.value : null,
        soils: 'value' in soils ? soils.value : null,
        show: MEASURES.find((one) => one === extras.show) ?? null,
        pick: extras.pick ?? null,
      },
      units,
      problem: problem ?? (wrong && 'problem' in wrong ? wrong.problem : null),
    };
  },
};

/** What is posted: the question without what belongs to one field, station or season’s own readings. */
export function regionOf({ question, states, box, soils }: RegionAsked): RegionInput {
  const {
    station: _s,
    latitudeDeg: _l,
    elevationM: _m,
    temperatureStation: _t,
    fillFromNeighbours: _f,
    gauge: _g,
    irrigation: _i,
    evidence: _e,
    outlook: _o,
    labelEntry: _b,
    otherTreatments: _a,
    zones: _z,
    ...rest
  } = question;
  return {
    ...rest,
    ...(states && { states: [...states] }),
    ...(box && { box }),
    ...(soils && { soilByStation: soils }),
  };
}

/** Parts of the field’s question that a region leaves out, in words. */
export function leftOut({
  gauge,
  irrigation,
  evidence,
  outlook,
  labelEntry,
  otherTreatments,
  zones,
}: QuestionInput): string[] {
  const parts: [unknown, string][] = [
    [gauge?.length, 'own gauge readings'],
    [irrigation?.length, 'irrigation'],
    [evidence?.length, 'soil tests and bioassays'],
    [outlook, 'the rain outlook'],
    [labelEntry, 'your own label entry'],
    [otherTreatments?.length, 'other treatments'],
    [zones?.length, 'parts with another overlap'],
  ];
  return parts.flatMap(([given, words]) => (given ? [words] : []));
}
