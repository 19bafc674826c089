import { InvalidInputError } from '../errors.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { LabelEntry, StoredLabel } from '../schema/labelEntry.ts';
import type { AskedQuestion, Question } from '../schema/question.ts';
import type { FieldPart } from './fieldPart.ts';
import { type LabelBook, labelUnknown } from './labelBook.ts';
import { resolveEntered } from './resolveEntered.ts';
import { type ResolvedQuestion, resolveQuestion } from './resolveQuestion.ts';
import type { ConditionedQuestion } from './withConditions.ts';

/** A treatment before one crop, looked up. */
export interface AskedTreatment {
  readonly resolved: ResolvedQuestion;
  /** One for each active sprayed. */
  readonly actives: readonly ResolvedQuestion[];
  /** The label's own words on conditions; empty where there are none. */
  readonly conditionsInWords: string;
  /** The label's wait for food and feed, in words; null where it gives none apart. */
  readonly foodFeedInterval: string | null;
}

/** A treatment before one crop, with what the label's conditions make of it. */
export type Treatment = AskedTreatment & ConditionedQuestion;

/** Most species of a mix that are judged. */
const MOST_SPECIES = 8;

/**
 * The species of a crop as the user wrote it: one, or those of a mix, joined by plus signs.
 * @throws {InvalidInputError} CROP_MIX
 */
export function speciesOf(crop: string): string[] {
  if (!crop.includes('+')) return [crop];
  const names = crop.split('+').map((name) => name.trim());
  const species = [...new Set(names)];
  if (names.includes('') || species.length > MOST_SPECIES) {
    throw new InvalidInputError('CROP_MIX', `"${crop}" cannot be read as a mix of crops.`, {
      hint: `Join the names with plus signs, such as "radish + pea"; ${MOST_SPECIES} at most.`,
      details: { field: 'crop' },
    });
  }
  return species;
}

/** Looks a treatment up, by the user's own label entry where there is one. @param ofField as {@link resolveQuestion} takes it */
export function treatmentOf(
  question: Question,
  entry: LabelEntry | null,
  catalogue: Catalogue,
  ofField?: FieldPart,
): AskedTreatment {
  if (entry !== null) return resolveEntered(question, entry, catalogue);
  const resolved = resolveQuestion(question, catalogue, undefined, ofField);
  return { resolved, actives: [resolved], conditionsInWords: '', foodFeedInterval: null };
}

/**
 * The label entry that a question names; null where it names none.
 * @throws {MissingDataError} LABEL_UNKNOWN
 */
export async function storedLabel(
  { labelEntry }: Pick<AskedQuestion, 'labelEntry'>,
  labels: Pick<LabelBook, 'labels' | 'label'> | undefined,
): Promise<StoredLabel | null> {
  if (typeof labelEntry !== 'string') return null;
  const found = (await labels?.label(labelEntry)) ?? null;
  if (found === null) {
    const known = (await labels?.labels()) ?? [];
    throw labelUnknown(
      labelEntry,
      known.map(({ entry }) => entry.id),
    );
  }
  return found;
}

/** A question with the active of its label entry, where it names none itself. */
export const withResidual = (input: AskedQuestion, stored: StoredLabel | null): AskedQuestion =>
  stored !== null && input.residual === undefined
    ? { ...input, residual: stored.entry.actives[0].name }
    : input;
