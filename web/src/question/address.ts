import { ASSUMPTIONS } from '../../../src/schema/assumptionList.ts';
import type { QuestionInput } from '../api/contract.ts';
import type { Units } from '../units/units.ts';
import { decodeAmounts, encodeAmounts } from './dayAmounts.ts';
import { QUESTION_DEFAULTS } from './defaults.ts';
import { decodeFindings, encodeFindings } from './findings.ts';
import { parseDate } from './parseDate.ts';
import {
  decodeStage,
  decodeTreatment,
  decodeZone,
  encodeStage,
  encodeTreatment,
  encodeZone,
} from './treatmentText.ts';

/** Version of the address; a link of another version is not read. */
export const ADDRESS_VERSION = '1';

/** What an address holds. */
export interface Addressed {
  /**
   * The question; null where the address asks none. Values are as written, for the server to judge; dates that are
   * none are left out, since the page itself reckons with them.
   */
  readonly question: QuestionInput | null;
  /** Units asked for by the link. */
  readonly units: Units | null;
  /** What the address holds that cannot be used. */
  readonly problem: string | null;
}

/** Keys of a question in the order an address lists them. */
const KEYS = [
  'residual',
  'appliedOn',
  'rateFraction',
  'crop',
  'plantOn',
  'soilClass',
  'station',
  'interval',
  'oddsLimit',
  'organicMatterPercent',
  'coverFraction',
  'soilPh',
  'overlapFactor',
  'canopyFraction',
  'asOf',
  'baseFrom',
  'baseTo',
  'restOfSeasonRain',
  'halfLifeDays',
  'sandPercent',
  'clayPercent',
  'latitudeDeg',
  'elevationM',
  'temperatureStation',
  'fillFromNeighbours',
  'country',
  'rateGramsPerHa',
  'standUse',
  'labelEntry',
] as const satisfies readonly (keyof QuestionInput)[];

const TEXT_KEYS: ReadonlySet<string> = new Set([
  'residual',
  'appliedOn',
  'crop',
  'plantOn',
  'soilClass',
  'station',
  'interval',
  'asOf',
  'temperatureStation',
  'country',
  'standUse',
  'labelEntry',
  'outlook.from',
  'outlook.to',
  'assume.moistureResponse',
]);

const DATE_KEYS: ReadonlySet<string> = new Set([
  'appliedOn',
  'plantOn',
  'asOf',
  'outlook.from',
  'outlook.to',
]);

const OUTLOOK_KEYS = ['belowPercent', 'nearPercent', 'abovePercent', 'from', 'to'] as const;

/** Keys that come once for each entry of a list. */
const LISTS = [
  ['also', 'otherTreatments', decodeTreatment],
  ['zone', 'zones', decodeZone],
] as const;

/** The query of an address that holds the whole question: only what differs from a default. */
export function encodeAddress(question: QuestionInput, units: Units): string {
  const query = new URLSearchParams({ v: ADDRESS_VERSION });
  for (const key of KEYS) {
    const value = question[key];
    if (value === undefined || value === (QUESTION_DEFAULTS as Record<string, unknown>)[key]) continue;
    query.set(key, `${value}`);
  }
  const {
    gauge = [],
    irrigation = [],
    evidence = [],
    otherTreatments = [],
    zones = [],
    growthStage,
  } = question;
  if (gauge.length > 0)
    query.set('gauge', encodeAmounts(gauge.map(({ date, rainMm }) => ({ date, mm: rainMm }))));
  if (irrigation.length > 0) query.set('irrigation', encodeAmounts(irrigation));
  if (evidence.length > 0) query.set('evidence', encodeFindings(evidence));
  if (growthStage !== undefined) query.set('growthStage', encodeStage(growthStage));
  for (const treatment of otherTreatments) query.append('also', encodeTreatment(treatment));
  for (const zone of zones) query.append('zone', encodeZone(zone));
  for (const key of OUTLOOK_KEYS) {
    const value = question.outlook?.[key];
    if (value !== undefined) query.set(`outlook.${key}`, `${value}`);
  }
  for (const { key, standard } of ASSUMPTIONS) {
    const value = question.assume?.[key];
    if (value !== undefined && value !== standard) query.set(`assume.${key}`, `${value}`);
  }
  if (units !== 'us') query.set('u', units);
  return `?${query.toString().replaceAll('%2C', ',').replaceAll('%3A', ':').replaceAll('%3D', '=')}`;
}

/** Reads an address back. Keys it does not know are named, not dropped in silence. */
export function decodeAddress(search: string): Addressed {
  const query = new URLSearchParams(search);
  const u = query.get('u');
  const units = u === 'us' || u === 'metric' ? u : null;
  const keys = [...query.keys()].filter((key) => key !== 'v' && key !== 'u');
  if (keys.length === 0) return { question: null, units, problem: null };
  const version = query.get('v') ?? ADDRESS_VERSION;
  if (version !== ADDRESS_VERSION) {
    return {
      question: null,
      units,
      problem: `This link is of version ${version}; this page reads version ${ADDRESS_VERSION}. The worked example stands here instead.`,
    };
  }
  const known = new Set<string>([
    ...KEYS,
    'gauge',
    'irrigation',
    'evidence',
    'growthStage',
    ...LISTS.map(([key]) => key),
    ...OUTLOOK_KEYS.map((key) => `outlook.${key}`),
    ...ASSUMPTIONS.map(({ key }) => `assume.${key}`),
  ]);
  const question: Record<string, unknown> = {};
  for (const [key, field, read] of LISTS)
    if (query.has(key)) question[field] = query.getAll(key).map((text): unknown => read(text));
  const lists = new Set<string>(LISTS.map(([key]) => key));
  const noDates = keys.filter((key) => DATE_KEYS.has(key) && !isDate(query.get(key)));
  for (const key of keys.filter((name) => known.has(name) && !lists.has(name) && !noDates.includes(name))) {
    const value = readValue(key, query.get(key) ?? '');
    const [group, inner] = key.split('.');
    if (inner === undefined) question[key] = value;
    else question[group] = { ...(question[group] as object | undefined), [inner]: value };
  }
  const strange = keys.filter((key) => !known.has(key));
  return {
    question: question as QuestionInput,
    units,
    problem:
      [
        ...(strange.length === 0
          ? []
          : [
              `The link holds ${strange.map((key) => `“${key}”`).join(', ')}, which this page does not know; the rest of it is used.`,
            ]),
        ...noDates.map((key) => `The link’s ${key}, “${query.get(key)}”, is no date and is left out.`),
      ].join(' ') || null,
  };
}

const isDate = (text: string | null): boolean =>
  text !== null && /^\d{4}-\d{2}-\d{2}$/.test(text) && 'value' in parseDate(text, 'iso');

/** What a key’s text stands for; else the text as written, which the server will refuse. */
function readValue(key: string, text: string): unknown {
  if (key === 'irrigation') return decodeAmounts(text);
  if (key === 'growthStage') return decodeStage(text);
  if (key === 'evidence') return decodeFindings(text);
  if (key === 'gauge') return decodeAmounts(text).map(({ date, mm }) => ({ date, rainMm: mm }));
  if (key === 'fillFromNeighbours') return text === 'true' ? true : text === 'false' ? false : text;
  if (TEXT_KEYS.has(key) || text.trim() === '' || Number.isNaN(Number(text))) return text;
  return Number(text);
}
