import { DrywakeError } from '../src/errors.ts';

/** The refusal that a promise ends in; fails the test where it ends well or in another error. */
export async function refusalOf(promise: Promise<unknown>): Promise<DrywakeError> {
  try {
    await promise;
  } catch (error) {
    if (error instanceof DrywakeError) return error;
    throw error;
  }
  throw new Error('expected a refusal, but the promise was fulfilled');
}
