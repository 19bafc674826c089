import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';

const PIECE_BYTES = 1024 ** 2;

/** Bytes that any file may unpack to, and that each of its packed bytes may; records take some ten. [B] */
const SPARE_BYTES = 256 * 1024 ** 2;
const BYTES_A_PACKED_BYTE = 60;

/**
 * Looks at what the database does not: whether a packed file can be unpacked to its end and its checksum holds, and
 * whether it holds far more than a record of its size would.
 */
export async function gzipState(path: string, signal: AbortSignal): Promise<'whole' | 'broken' | 'swollen'> {
  let left = Number.POSITIVE_INFINITY;
  const nowhere = new Writable({
    highWaterMark: PIECE_BYTES,
    write(piece: Buffer, _encoding, done) {
      left -= piece.length;
      done(left < 0 ? new Error('It holds far more than a record would.') : null);
    },
  });
  try {
    left = SPARE_BYTES + BYTES_A_PACKED_BYTE * (await stat(path)).size;
    await pipeline(
      createReadStream(path, { highWaterMark: PIECE_BYTES }),
      createGunzip({ chunkSize: PIECE_BYTES }),
      nowhere,
      { signal },
    );
    return 'whole';
  } catch {
    return left < 0 ? 'swollen' : 'broken';
  }
}
