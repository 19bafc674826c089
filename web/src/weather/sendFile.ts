import type { ImportEvent, Problem, ReadOptions } from '../api/contract.ts';
import { GoneError, RefusedError } from '../api/requestJson.ts';

const PATH = '/api/weather/import';

/**
 * Sends a file to be imported and tells how far that has come; the last event says what became of it.
 * @throws {RefusedError} with the server's reason
 * @throws {GoneError} where the server does not answer, or the answer breaks off
 */
export async function sendFile(
  file: File,
  options: ReadOptions,
  tell: (event: ImportEvent) => void,
): Promise<void> {
  const query = new URLSearchParams({ name: file.name, ...options });
  let response: Response;
  try {
    response = await fetch(`${PATH}?${query}`, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: file,
    });
  } catch {
    throw new GoneError('The server does not answer.');
  }
  if (!response.ok || response.body === null) {
    const problem = (await response.json().catch(() => null)) as Problem | null;
    throw problem?.code ? new RefusedError(problem) : new GoneError('The server gave no reason.');
  }
  let ended = false;
  for await (const event of events(response.body)) {
    tell(event);
    ended = event.step !== 'reading';
  }
  if (!ended) throw new GoneError('The answer broke off.');
}

/** Stops the import under way. */
export async function stopImport(): Promise<void> {
  await fetch(PATH, { method: 'DELETE' }).catch(() => undefined);
}

/** The lines of a body, each an event. */
async function* events(body: ReadableStream<Uint8Array>): AsyncGenerator<ImportEvent> {
  const reader = body.getReader();
  const text = new TextDecoder();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read().catch(() => {
      throw new GoneError('The answer broke off.');
    });
    rest += done ? text.decode() : text.decode(value, { stream: true });
    const lines = rest.split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) if (line !== '') yield JSON.parse(line) as ImportEvent;
    if (done) return;
  }
}
