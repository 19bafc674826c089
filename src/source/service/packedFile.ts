import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';

/** What is wrong with a packed file: cut short, damaged, or larger unpacked than a reader takes. */
export type PackedFault = 'cut-short' | 'damaged' | 'too-large';

/** Whether a file begins as gzip-packed ones do. */
export async function isPacked(path: string): Promise<boolean> {
  const file = await open(path);
  try {
    const { bytesRead, buffer } = await file.read(Buffer.alloc(2), 0, 2, 0);
    return bytesRead === 2 && buffer[0] === 0x1f && buffer[1] === 0x8b;
  } finally {
    await file.close();
  }
}

/**
 * Unpacks a gzip-packed file to nowhere, piece by piece, and tells what is wrong with it; null where nothing is.
 * @param mostBytes most that it may hold unpacked [B]
 */
export async function packedFault(path: string, mostBytes: number): Promise<PackedFault | null> {
  let unpacked = 0;
  const sink = new Writable({
    write(chunk: Buffer, _encoding, done) {
      unpacked += chunk.length;
      done(unpacked > mostBytes ? Object.assign(new Error('too large'), { code: 'TOO_LARGE' }) : null);
    },
  });
  try {
    await pipeline(createReadStream(path), createGunzip(), sink);
    return null;
  } catch (error) {
    switch ((error as NodeJS.ErrnoException).code) {
      case 'Z_BUF_ERROR':
        return 'cut-short';
      case 'Z_DATA_ERROR':
        return 'damaged';
      case 'TOO_LARGE':
        return 'too-large';
      default:
        throw error;
    }
  }
}
