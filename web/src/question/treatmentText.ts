import type { QuestionInput } from '../api/contract.ts';
import { QUESTION_DEFAULTS } from './defaults.ts';

/** Another treatment of the field, and a part of it with another overlap, as the question holds them. */
export type OtherTreatment = NonNullable<QuestionInput['otherTreatments']>[number];
export type Zone = NonNullable<QuestionInput['zones']>[number];
export type GrowthStage = NonNullable<QuestionInput['growthStage']>;

/** Names of a treatment’s parts in an address, beside its date and residual. */
const PARTS = [
  ['label', 'labelEntry'],
  ['rate', 'rateFraction'],
  ['rate-grams', 'rateGramsPerHa'],
  ['overlap', 'overlapFactor'],
  ['canopy', 'canopyFraction'],
  ['stage', 'growthStage'],
  ['interval', 'interval'],
  ['half-life', 'halfLifeDays'],
] as const satisfies readonly (readonly [string, keyof OtherTreatment])[];
const IN_WORDS: ReadonlySet<string> = new Set(['labelEntry', 'interval']);

/** Signs that part a treatment’s text stand for themselves nowhere in its words. */
const escaped = (text: string): string => text.replace(/[%:=]/g, encodeURIComponent);

function unescaped(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

const numberOr = (text: string): number | string =>
  text.trim() === '' || Number.isNaN(Number(text)) ? text : Number(text);

/** For the address: "2026-05-01:atrazine:rate=0.5:interval=9 months". */
export function encodeTreatment(treatment: OtherTreatment): string {
  const parts = PARTS.flatMap(([name, key]) => {
    const value = treatment[key];
    if (value === undefined || value === (QUESTION_DEFAULTS as Record<string, unknown>)[key]) return [];
    const text = typeof value === 'object' ? encodeStage(value) : `${value}`;
    return [`${name}=${escaped(text)}`];
  });
  return [treatment.appliedOn, escaped(treatment.residual ?? ''), ...parts].join(':');
}

/** The same read back; what cannot be read stays as it is, for the server to refuse. */
export function decodeTreatment(text: string): OtherTreatment {
  const [appliedOn, residual = '', ...rest] = text.split(':');
  const treatment: Record<string, unknown> = { appliedOn };
  if (residual !== '') treatment.residual = unescaped(residual);
  for (const part of rest) {
    const [name, value = ''] = part.split('=');
    const key: string = PARTS.find(([known]) => known === name)?.[1] ?? name;
    const said = unescaped(value);
    treatment[key] = key === 'growthStage' ? decodeStage(said) : IN_WORDS.has(key) ? said : numberOr(said);
  }
  return treatment as OtherTreatment;
}

/** "turn rows:2". */
export const encodeZone = ({ name, overlapFactor }: Zone): string => `${escaped(name)}:${overlapFactor}`;

export function decodeZone(text: string): Zone {
  const [name, overlap = ''] = text.split(':');
  return { name: unescaped(name), overlapFactor: numberOr(overlap) } as Zone;
}

/** "cereals:31"; an old sward ends in ":turf". */
export const encodeStage = ({ plants, bbch, establishedTurf }: GrowthStage): string =>
  [plants, bbch, ...(establishedTurf ? ['turf'] : [])].join(':');

export function decodeStage(text: string): GrowthStage {
  const [plants, bbch = '', turf] = text.split(':');
  return { plants, bbch: numberOr(bbch), ...(turf === 'turf' && { establishedTurf: true }) } as GrowthStage;
}
