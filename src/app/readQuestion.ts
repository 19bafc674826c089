import type { z } from 'zod';
import { InvalidInputError } from '../errors.ts';

/** What a missing field would have told. */
const SAID_AS: Readonly<Record<string, string>> = {
  station: 'which weather station to use (station)',
  appliedOn: 'when the residual was sprayed (appliedOn)',
  residual: 'which residual was sprayed (residual)',
  crop: 'which crop is to follow (crop)',
  plantOn: 'when the crop is to be planted (plantOn)',
};

/**
 * Parses what a user or client sent against a schema.
 * @throws {InvalidInputError} QUESTION_UNREADABLE; the message names the first field at fault, `details.issues` all
 */
export function readQuestion<T extends z.ZodType>(schema: T, input: unknown): z.output<T> {
  const result = schema.safeParse(input, { reportInput: true });
  if (result.success) return result.data;
  const issues = result.error.issues.map(({ path, message, code, ...issue }) => {
    const missing = code === 'invalid_type' && 'input' in issue && issue.input === undefined;
    return { field: path.join('.'), message, missing };
  });
  const [{ field, message, missing }] = issues;
  throw new InvalidInputError(
    'QUESTION_UNREADABLE',
    missing
      ? `The question does not say ${SAID_AS[field] ?? field}.`
      : `${field ? `${field}: ` : ''}${message}.`,
    {
      hint: 'Dates are written YYYY-MM-DD, fractions from 0 to 1, percentages from 0 to 100.',
      details: {
        field,
        issues: issues.map(({ field: name, message: text }) => ({ field: name, message: text })),
      },
    },
  );
}
