import { type FileHandle, open } from 'node:fs/promises';
import { again, type PartAnswer, type PartRequest } from './partRequest.ts';
import type { FileVersion } from './recordsFolder.ts';
import type { ServiceOptions } from './serviceOptions.ts';
import { tooLarge, webPage } from './serviceRefusals.ts';
import type { TimeLimit } from './timeLimit.ts';

/**
 * Writes an answer's body into the part file: from its beginning, or for status 206 from its end on.
 * @throws {SourceFailedError} FETCH_TOO_LARGE, FETCH_NOT_A_RECORD
 */
export async function receiveBody(
  response: Response,
  request: PartRequest,
  version: FileVersion,
  options: ServiceOptions,
  limit: TimeLimit,
): Promise<PartAnswer> {
  const from = response.status === 206 ? (request.part?.bytes ?? 0) : 0;
  const expected = expectedBytes(response);
  if (expected !== null && expected > options.mostBytes) throw tooLarge(request.title, options.mostBytes);
  const file = await open(request.partPath, from === 0 ? 'w' : 'r+');
  try {
    // Emptied before its version is noted: a part never holds bytes of another version than the one noted.
    if (from === 0) await request.begin(version);
    const bytes = await pour(response, file, from, request, options, limit);
    return expected === null || bytes === expected
      ? { kind: 'whole', version }
      : again(`the answer ended after ${bytes} of ${expected} bytes`);
  } finally {
    await file.close();
  }
}

/** Size of the whole file, where the answer tells it. [B] */
function expectedBytes({ status, headers }: Response): number | null {
  if (/gzip|deflate|br|zstd/.test(headers.get('content-encoding') ?? '')) return null;
  const text =
    status === 206 ? /\/(\d+)$/.exec(headers.get('content-range') ?? '')?.[1] : headers.get('content-length');
  return text && /^\d+$/.test(text) ? Number(text) : null;
}

/** Writes the body into the file from there on; gives the size that the file then has. [B] */
async function pour(
  response: Response,
  file: FileHandle,
  from: number,
  request: PartRequest,
  options: ServiceOptions,
  limit: TimeLimit,
): Promise<number> {
  const reader = response.body?.getReader();
  let at = from;
  try {
    while (reader !== undefined) {
      limit.next(options.idleMs, `no data came for ${options.idleMs / 1000} s`);
      const { done, value } = await limit.within(reader.read());
      if (done) break;
      if (at === 0 && looksLikeWebPage(value)) throw webPage(request.title);
      if (at + value.length > options.mostBytes) throw tooLarge(request.title, options.mostBytes);
      await file.write(value, 0, value.length, at);
      at += value.length;
      request.onBytes(value.length);
    }
  } finally {
    reader?.cancel().catch(() => undefined);
  }
  return at;
}

const looksLikeWebPage = (bytes: Uint8Array): boolean =>
  /^\s*<(!doctype|html|head|body|\?xml|error)/i.test(Buffer.from(bytes.subarray(0, 200)).toString('latin1'));
