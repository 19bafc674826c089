import type { ImportEvent, ReadOptions } from '../api/contract.ts';
import { postForLines } from '../api/postForLines.ts';
import { GoneError } from '../api/requestJson.ts';

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
  const events = postForLines<ImportEvent>(`${PATH}?${query}`, {
    headers: { 'content-type': 'application/octet-stream' },
    body: file,
  });
  let ended = false;
  for await (const event of events) {
    tell(event);
    ended = event.step !== 'reading';
  }
  if (!ended) throw new GoneError('The answer broke off.');
}

/** Stops the import under way. */
export async function stopImport(): Promise<void> {
  await fetch(PATH, { method: 'DELETE' }).catch(() => undefined);
}
