import type { Problem } from './contract.ts';

/** The server refused, and says why. */
export class RefusedError extends Error {
  constructor(readonly problem: Problem) {
    super(problem.message);
  }
}

/** The server did not answer, or not in its own words. */
export class GoneError extends Error {}

/**
 * Asks the page's own server.
 * @throws {RefusedError} with the server's reason
 * @throws {GoneError} where no server answers
 */
export async function requestJson<T>(path: string, init?: RequestInit): Promise<T> {
  const response = await responseTo(path, init);
  const body: unknown = await response.json().catch((error: unknown) => {
    if (init?.signal?.aborted) throw error;
    throw new GoneError(`The server answered ${response.status} without a reason.`);
  });
  if (response.ok) return body as T;
  if (isProblem(body)) throw new RefusedError(body);
  throw new GoneError(`The server answered ${response.status} without a reason.`);
}

/**
 * Asks the page's own server for a file.
 * @throws {RefusedError} with the server's reason
 * @throws {GoneError} where no server answers
 */
export async function requestFile(
  path: string,
  init: RequestInit,
): Promise<{ readonly name: string; readonly text: string }> {
  const response = await responseTo(path, init);
  const name = /filename="([^"]+)"/.exec(response.headers.get('content-disposition') ?? '')?.[1];
  if (response.ok && name !== undefined) return { name, text: await response.text() };
  const body: unknown = await response.json().catch(() => null);
  if (isProblem(body)) throw new RefusedError(body);
  throw new GoneError(`The server answered ${response.status} without a reason.`);
}

async function responseTo(path: string, init?: RequestInit): Promise<Response> {
  try {
    return await fetch(path, init);
  } catch (error) {
    if (init?.signal?.aborted) throw error;
    throw new GoneError('The server does not answer.');
  }
}

function isProblem(body: unknown): body is Problem {
  return typeof body === 'object' && body !== null && 'code' in body && 'message' in body;
}
