import { createReadStream } from 'node:fs';
import { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';

const PIECE_BYTES = 1024 ** 2;

/** Whether a packed file can be unpacked to its end and its checksum holds; the database looks at neither. */
export async function gzipIsWhole(path: string, signal: AbortSignal): Promise<boolean> {
  const nowhere = new Writable({
    highWaterMark: PIECE_BYTES,
    write: (_piece, _encoding, done) => done(),
  });
  try {
    await pipeline(
      createReadStream(path, { highWaterMark: PIECE_BYTES }),
      createGunzip({ chunkSize: PIECE_BYTES }),
      nowhere,
      { signal },
    );
    return true;
  } catch {
    return false;
  }
}
