import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import { DrywakeError, SourceFailedError } from '../errors.ts';
import { FETCH_AGAIN } from './damagedFile.ts';
import { isInventory } from './inventory.ts';
import { LAYOUTS } from './layouts.ts';
import type { RecordLayout } from './recordLayout.ts';

/**
 * Most that a file may hold once unpacked: with all that is made of it, reading one stays under 512 MB. The database
 * reads larger ones, by pieces. [B]
 */
export const MOST_BYTES = 96 * 1024 ** 2;

const HEAD_BYTES = 16_384;
const BYTE_ORDER_MARK = Buffer.from([0xef, 0xbb, 0xbf]);
const unpack = promisify(gunzip);

/** Code of the refusal of a file that is sound but holds no layout we read. */
export const LAYOUT_UNKNOWN = 'FILE_LAYOUT_UNKNOWN';

/**
 * The whole content of a plain or gzip-packed file; packing is told by the first bytes, not by the name.
 * @param mostBytes most that it may hold unpacked [B]
 * @throws {SourceFailedError} FILE_NOT_FOUND, FILE_EMPTY, FILE_TOO_LARGE, FILE_DAMAGED, FILE_UNREADABLE
 */
export async function readUnpacked(path: string, mostBytes: number = MOST_BYTES): Promise<Buffer> {
  const name = basename(path);
  try {
    if ((await stat(path)).size > mostBytes) throw tooLarge(name, mostBytes);
    const packed = await readFile(path);
    const unpacked = isGzip(packed) ? await unpack(packed, { maxOutputLength: mostBytes }) : packed;
    const bytes = unpacked.subarray(0, 3).equals(BYTE_ORDER_MARK) ? unpacked.subarray(3) : unpacked;
    if (bytes.length === 0)
      throw new SourceFailedError('FILE_EMPTY', `${name} is empty.`, { hint: FETCH_AGAIN });
    return bytes;
  } catch (error) {
    throw error instanceof DrywakeError ? error : readFailure(path, mostBytes, error);
  }
}

/**
 * The layout of a file's content, told by its first lines.
 * @throws {SourceFailedError} FILE_LAYOUT_UNKNOWN or, where it is a web page, FILE_DAMAGED
 */
export function layoutOf(bytes: Buffer, fileName: string): RecordLayout {
  const head = bytes.toString('utf8', 0, HEAD_BYTES).trimStart();
  const firstLines = head.split(/\r?\n/);
  const [firstLine] = firstLines;
  if (/^<(!doctype|html|head|body|\?xml)/i.test(head)) {
    throw new SourceFailedError('FILE_DAMAGED', `${fileName} holds a web page, not a weather record.`, {
      hint: 'The download was probably answered by an error page; fetch the file again.',
      details: { file: fileName },
    });
  }
  if (firstLine === '') {
    throw new SourceFailedError('FILE_EMPTY', `${fileName} holds nothing but blanks.`, { hint: FETCH_AGAIN });
  }
  const layout = LAYOUTS.find((candidate) => candidate.recognises(firstLines));
  if (layout === undefined) {
    if (isInventory(fileName)) throw noRecord(fileName);
    throw new SourceFailedError(
      LAYOUT_UNKNOWN,
      `${fileName} has no layout that can be read; its first line begins "${printable(firstLine)}".`,
      {
        hint: `Layouts that can be read, plain or gzip-packed: ${LAYOUTS.map((known) => known.name).join('; ')}. Rewrite others as lines under the header "date,rain mm,max temp C,min temp C".`,
        details: { file: fileName },
      },
    );
  }
  return layout;
}

/** The inventory says what stations measure; it holds no days. */
const noRecord = (fileName: string): SourceFailedError =>
  new SourceFailedError(LAYOUT_UNKNOWN, `${fileName} is a list of what stations measure, not a record.`, {
    hint: 'Name record files; station lists beside them are found by their names.',
    details: { file: fileName },
  });

const isGzip = (bytes: Buffer): boolean => bytes[0] === 0x1f && bytes[1] === 0x8b;

const printable = (line: string): string => line.slice(0, 60).replace(/[^\x20-\x7e]/g, '?');

const tooLarge = (name: string, mostBytes: number): SourceFailedError =>
  new SourceFailedError('FILE_TOO_LARGE', `${name} holds more than ${mostBytes} bytes unpacked.`, {
    hint: 'Import by-year files with “drywake weather import”, which reads them by pieces, or cut the file by station.',
    details: { file: name, mostBytes },
  });

function readFailure(path: string, mostBytes: number, error: unknown): SourceFailedError {
  const name = basename(path);
  const code = (error as NodeJS.ErrnoException).code;
  const more = { hint: FETCH_AGAIN, details: { file: name }, cause: error };
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return new SourceFailedError('FILE_NOT_FOUND', `There is no file or folder "${path}".`, {
        ...more,
        hint: 'Check the path; it is taken from the folder in which the command runs.',
      });
    case 'ERR_BUFFER_TOO_LARGE':
      return tooLarge(name, mostBytes);
    case 'Z_BUF_ERROR':
      return new SourceFailedError(
        'FILE_DAMAGED',
        `${name} ends in the middle: its packed content is cut short.`,
        more,
      );
    case 'Z_DATA_ERROR':
      return new SourceFailedError(
        'FILE_DAMAGED',
        `${name} cannot be unpacked: its packed content is damaged.`,
        more,
      );
    default:
      return new SourceFailedError('FILE_UNREADABLE', `${name} cannot be read (${code ?? String(error)}).`, {
        ...more,
        hint: 'Check that it is a file and that you may read it.',
      });
  }
}
