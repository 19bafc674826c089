import { z } from 'zod';
import { meantOf } from './meant.ts';
import { schemaRefusal } from './schemaRefusal.ts';

const WRITTEN = 'Dates are written YYYY-MM-DD, fractions from 0 to 1, percentages from 0 to 100.';

/** The field that an unknown one was probably meant to be, as a hint; null where nothing is near. */
function meantBy(schema: z.ZodType, issue: z.core.$ZodIssue): string | null {
  if (issue.code !== 'unrecognized_keys') return null;
  const known = issue.path.reduce(below, inner(schema));
  return known instanceof z.ZodObject ? meantOf(issue.keys[0], Object.keys(known.shape)) : null;
}

/** A schema without what wraps it: optional, default, list. */
function inner(schema: z.ZodType | undefined): z.ZodType | undefined {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodNullable || schema instanceof z.ZodDefault)
    return inner(schema.unwrap() as z.ZodType);
  return schema;
}

/** The schema of a part. */
function below(schema: z.ZodType | undefined, key: PropertyKey): z.ZodType | undefined {
  if (schema instanceof z.ZodArray) return inner(schema.element as z.ZodType);
  return schema instanceof z.ZodObject ? inner(schema.shape[String(key)]) : undefined;
}

/**
 * Parses what a user or client sent against a schema.
 * @throws {InvalidInputError} QUESTION_UNREADABLE; the message names the first field at fault, `details.issues` all
 */
export function readQuestion<T extends z.ZodType>(schema: T, input: unknown): z.output<T> {
  const result = schema.safeParse(input);
  if (result.success) return result.data;
  const { issues } = result.error;
  throw schemaRefusal('QUESTION_UNREADABLE', issues, input, { hint: meantBy(schema, issues[0]) ?? WRITTEN });
}
