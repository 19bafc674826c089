import { open } from 'node:fs/promises';
import { constants, gunzipSync } from 'node:zlib';

/** How a file of the eight-field layout is to be read by the database. */
export interface BulkLayout {
  readonly header: boolean;
  readonly newLine: '\\n' | '\\r\\n';
  readonly compression: 'none' | 'gzip';
}

const HEAD_BYTES = 64 * 1024;
const FIELDS = 8;
const HEADER = /^(ID|STATION),[^,\d]+,ELEMENT,/i;
const VALUE_LINE = /^[\w-]+,\d{8},[A-Z][A-Z0-9]{3},/;

/**
 * The layout of a file whose lines are id, date, element, value, three flags and time (by-station and by-year files);
 * null where its first line is another or the file cannot be looked at, which is the record readers' to say.
 */
export async function bulkLayoutOf(path: string): Promise<BulkLayout | null> {
  try {
    const bytes = await headOf(path);
    const packed = bytes[0] === 0x1f && bytes[1] === 0x8b;
    const text = (packed ? unpackedHead(bytes) : bytes).toString('latin1');
    const end = text.indexOf('\n');
    if (end < 0) return null;
    const newLine = text[end - 1] === '\r' ? '\\r\\n' : '\\n';
    const first = text.slice(0, end).replace(/\r$/, '');
    const header = HEADER.test(first);
    if (first.split(',').length !== FIELDS || !(header || VALUE_LINE.test(first))) return null;
    return { header, newLine, compression: packed ? 'gzip' : 'none' };
  } catch {
    return null;
  }
}

async function headOf(path: string): Promise<Buffer> {
  const file = await open(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}

/** What the first bytes of a packed file unpack to, its end cut off. */
const unpackedHead = (bytes: Buffer): Buffer =>
  gunzipSync(bytes, { finishFlush: constants.Z_SYNC_FLUSH, maxOutputLength: 64 * 1024 ** 2 });
