import type { Problem } from './contract.ts';
import { GoneError, RefusedError } from './requestJson.ts';

/**
 * Posts to a route that answers line by line, and gives each line as it comes.
 * @throws {RefusedError} with the server's reason
 * @throws {GoneError} where the server does not answer, or the answer breaks off
 */
export async function* postForLines<Event>(
  path: string,
  init: Pick<RequestInit, 'body' | 'headers' | 'signal'>,
): AsyncGenerator<Event> {
  let response: Response;
  try {
    response = await fetch(path, { method: 'POST', ...init });
  } catch (error) {
    if (init.signal?.aborted) throw error;
    throw new GoneError('The server does not answer.');
  }
  if (!response.ok || response.body === null) {
    const problem = (await response.json().catch(() => null)) as Problem | null;
    throw problem?.code ? new RefusedError(problem) : new GoneError('The server gave no reason.');
  }
  yield* linesOf<Event>(response.body, init.signal);
}

async function* linesOf<Event>(
  body: ReadableStream<Uint8Array>,
  signal?: AbortSignal | null,
): AsyncGenerator<Event> {
  const reader = body.getReader();
  const text = new TextDecoder();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read().catch((error: unknown) => {
      if (signal?.aborted) throw error;
      throw new GoneError('The answer broke off.');
    });
    rest += done ? text.decode() : text.decode(value, { stream: true });
    const lines = rest.split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) if (line !== '') yield JSON.parse(line) as Event;
    if (done) return;
  }
}
