import type { LabelEntry } from '../api/contract.ts';

export type Clause = LabelEntry['intervals'][number]['clauses'][number];
export type Kind = Clause['kind'];
export type ClauseOf<K extends Kind> = Extract<Clause, { kind: K }>;

/** About an inch. [mm] */
export const USUAL_MM = 25.4;
/** Taken where the label asks for water of a whole year: 15 inches. [mm] */
const USUAL_ANNUAL_MM = 381;

const otherwise = { grants: 'interval', ifNot: 'not stated' } as const;

/** Each kind of condition: what the form calls it, and one to begin with. */
export const KINDS: { readonly [K in Kind]: { readonly title: string; readonly fresh: ClauseOf<K> } } = {
  water: {
    title: 'Water by a day',
    fresh: {
      ...{ kind: 'water', minMm: USUAL_MM, counts: 'rain and irrigation' },
      ...{ window: { from: 'application', to: 'planting' }, grants: 'interval', ifNot: 'not allowed' },
    },
  },
  startingRain: {
    title: 'Rain that starts the interval',
    fresh: {
      kind: 'startingRain',
      minMm: USUAL_MM,
      onDrySoilOnly: false,
      grants: 'interval',
      ifNot: 'not allowed',
    },
  },
  stormGuard: {
    title: 'Part of the water early',
    fresh: { kind: 'stormGuard', minMm: USUAL_MM, by: 'spring end', ...otherwise },
  },
  annualRain: {
    title: 'Water of a usual year',
    fresh: { kind: 'annualRain', minMm: USUAL_ANNUAL_MM, counts: 'rain', ...otherwise },
  },
  soilPh: { title: 'Soil pH', fresh: { kind: 'soilPh', below: 7.5, ...otherwise } },
  organicMatter: { title: 'Organic matter', fresh: { kind: 'organicMatter', minPercent: 2, ...otherwise } },
  soilTexture: {
    title: 'Soil texture',
    fresh: { kind: 'soilTexture', groups: ['medium', 'fine'], ...otherwise },
  },
  tillage: { title: 'Tillage before planting', fresh: { kind: 'tillage', ...otherwise } },
  zone: {
    title: 'A place, climate or practice',
    fresh: { kind: 'zone', words: 'as the label describes it', ...otherwise },
  },
  rate: { title: 'Rate', fresh: { kind: 'rate', toGramsPerHa: 100, ...otherwise } },
  bioassay: {
    title: 'Field bioassay',
    fresh: { kind: 'bioassay', role: 'required', grants: 'interval', ifNot: 'not allowed' },
  },
};
