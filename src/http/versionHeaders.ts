import { z } from '@hono/zod-openapi';
import { InvalidInputError } from '../errors.ts';

/** The headers by which a change says what it takes the place of. */
export const versionHeadersSchema = z.object({
  'if-match': z
    .string()
    .optional()
    .meta({ description: 'Version that the change takes the place of, in quotes: "3"' }),
  'if-none-match': z.string().optional().meta({ description: '* for a new record' }),
});
type VersionHeaders = z.infer<typeof versionHeadersSchema>;

/**
 * The version that a change takes the place of; null for a new record.
 * @throws {InvalidInputError} VERSION_MISSING, VERSION_UNREADABLE
 */
export function versionOf(headers: VersionHeaders): number | null {
  if (headers['if-match'] !== undefined) return presentVersion(headers);
  const none = headers['if-none-match']?.trim();
  if (none === '*') return null;
  if (none === undefined) throw missing();
  throw unreadable('If-None-Match', none);
}

/**
 * The version that a change of a kept record takes the place of.
 * @throws {InvalidInputError} VERSION_MISSING, VERSION_UNREADABLE
 */
export function presentVersion({ 'if-match': given }: VersionHeaders): number {
  if (given === undefined) throw missing();
  const version = /^"?([1-9]\d{0,8})"?$/.exec(given.trim())?.[1];
  if (version === undefined) throw unreadable('If-Match', given);
  return Number(version);
}

/** A version as the header that answers carry. */
export const versionTag = (version: number): string => `"${version}"`;

const missing = (): InvalidInputError =>
  new InvalidInputError('VERSION_MISSING', 'The change does not say which version it takes the place of.', {
    hint: 'Send If-Match with the version in quotes, or If-None-Match: * for a new record.',
  });

const unreadable = (header: string, given: string): InvalidInputError =>
  new InvalidInputError('VERSION_UNREADABLE', `${header} is ${given}, which is no version.`, {
    hint: 'Send If-Match with the version in quotes, such as "3", or If-None-Match: * for a new record.',
  });
