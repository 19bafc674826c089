import { InvalidArgumentError } from 'commander';
import { meantOf } from '../app/meant.ts';
import type { QuestionInput } from '../schema/question.ts';

type OtherInput = NonNullable<QuestionInput['otherTreatments']>[number];
type ZoneInput = NonNullable<QuestionInput['zones']>[number];
type StageInput = NonNullable<QuestionInput['growthStage']>;

/** Keys of a treatment written as DATE=RESIDUAL,KEY=VALUE, by the field they set. */
const KEYS = {
  rate: 'rateFraction',
  'rate-grams': 'rateGramsPerHa',
  overlap: 'overlapFactor',
  canopy: 'canopyFraction',
  interval: 'interval',
  'half-life': 'halfLifeDays',
  label: 'labelEntry',
} as const;
const IN_WORDS = new Set<string>(['interval', 'label']);
const ALSO_HELP =
  'Write DATE=RESIDUAL and what differs, such as 2026-05-01=atrazine,rate=0.5,interval=9 months, or a JSON object.';

/** Other treatments such as 2026-05-01=atrazine,rate=0.5, or as JSON objects; collected over repeats. */
export function alsoOption(text: string, earlier: OtherInput[] = []): OtherInput[] {
  return [...earlier, text.trimStart().startsWith('{') ? fromJson(text) : fromWords(text)];
}

function fromJson(text: string): OtherInput {
  try {
    return JSON.parse(text);
  } catch {
    throw new InvalidArgumentError(ALSO_HELP);
  }
}

function fromWords(text: string): OtherInput {
  const [head, ...pairs] = text.split(',').map((part) => part.trim());
  const match = /^(\d{4}-\d{2}-\d{2})=(.+)$/.exec(head);
  if (!match) throw new InvalidArgumentError(ALSO_HELP);
  const fields = pairs.map((pair) => {
    const [key, value = ''] = pair.split(/=(.*)/s);
    if (!(key in KEYS) || value === '' || (!IN_WORDS.has(key) && !Number.isFinite(Number(value)))) {
      const keys = Object.keys(KEYS);
      const meant = key in KEYS ? null : meantOf(key, keys);
      throw new InvalidArgumentError(
        `"${pair}" cannot be read. ${meant === null ? '' : `${meant} `}Keys are ${keys.join(', ')}.`,
      );
    }
    return [KEYS[key as keyof typeof KEYS], IN_WORDS.has(key) ? value : Number(value)];
  });
  return { appliedOn: match[1], residual: match[2], ...Object.fromEntries(fields) };
}

/** Overlap zones such as "turn rows=2", collected over repeats. */
export function zoneOption(text: string, earlier: ZoneInput[] = []): ZoneInput[] {
  const match = /^(.+)=(\d+(?:\.\d+)?)$/.exec(text.trim());
  if (!match) throw new InvalidArgumentError('Write NAME=OVERLAP, for example "turn rows=2".');
  return [...earlier, { name: match[1].trim(), overlapFactor: Number(match[2]) }];
}

/** A growth stage such as cereals=31. */
export function growthStageOption(text: string): StageInput {
  const match = /^([a-z ]+)=(\d{1,2})$/.exec(text.trim());
  if (!match) throw new InvalidArgumentError('Write CROP=STAGE with a BBCH code, for example cereals=31.');
  return { plants: match[1] as StageInput['plants'], bbch: Number(match[2]) };
}
