import { ConflictError } from '../errors.ts';

/** @throws {ConflictError} STOPPED where the user has asked for it */
export function throwIfStopped(signal: AbortSignal | undefined): void {
  if (!signal?.aborted) return;
  throw new ConflictError('STOPPED', 'The work was stopped before its end.', {
    hint: 'Nothing was changed; start it again when it suits.',
  });
}
