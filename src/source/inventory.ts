import { damagedFile } from './damagedFile.ts';
import { integerIn } from './integerIn.ts';
import { nextLineAt, textEnd } from './lineBytes.ts';

/** Name of the inventory, plain or gzip-packed. */
export const isInventory = (fileName: string): boolean => /^ghcnd-inventory\.txt(\.gz)?$/i.test(fileName);

/** An element that a station has measured, with its span of years. */
export interface InventoryEntry {
  readonly stationId: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly element: string;
  readonly firstYear: number;
  readonly lastYear: number;
}

/** What of the inventory is wanted; whatever is absent is not asked for. */
export interface InventoryWish {
  readonly stations?: ReadonlySet<string>;
  readonly elements?: ReadonlySet<string>;
}

// id 1-11, latitude 13-20, longitude 22-30, element 32-35, first year 37-40, last year 42-45.
const LINE_LENGTH = 45;

/**
 * Entries of the fixed-width inventory, in the file's order, made one at a time.
 * @throws {SourceFailedError} FILE_DAMAGED, naming file, line and column
 */
export function* inventoryEntries(
  bytes: Buffer,
  fileName: string,
  { stations, elements }: InventoryWish = {},
): Generator<InventoryEntry> {
  for (let at = 0, line = 1, next = 0; at < bytes.length; at = next, line++) {
    next = nextLineAt(bytes, at);
    const length = textEnd(bytes, at, next) - at;
    if (length === 0) continue;
    const damaged = (column: number, what: string) => damagedFile(fileName, line, column, what);
    if (length < LINE_LENGTH) {
      throw damaged(
        length + 1,
        `the line ends after ${length} characters; a line of this layout has ${LINE_LENGTH}`,
      );
    }
    const text = (from: number, to: number) => bytes.toString('latin1', at + from, at + to);
    const element = text(31, 35);
    if (elements !== undefined && !elements.has(element)) continue;
    const stationId = text(0, 11);
    if (stations !== undefined && !stations.has(stationId)) continue;
    if (!/^[\w-]+$/.test(stationId))
      throw damaged(1, `"${stationId}" is no station id of 11 letters and digits`);
    if (!/^[A-Z][A-Z0-9*]{3}$/.test(element))
      throw damaged(32, `"${element}" is no element name of 4 letters`);
    const degrees = (from: number, to: number, most: number, what: string) => {
      const value = Number(text(from, to).trim() || Number.NaN);
      if (!(Math.abs(value) <= most)) throw damaged(from + 1, `"${text(from, to)}" is no ${what}`);
      return value;
    };
    const year = (from: number) => {
      const value = integerIn(bytes, at + from, at + from + 4);
      if (!(value >= 1600)) throw damaged(from + 1, `"${text(from, from + 4)}" is no year`);
      return value;
    };
    yield {
      stationId,
      latitudeDeg: degrees(12, 20, 90, 'latitude from -90 to 90'),
      longitudeDeg: degrees(21, 30, 180, 'longitude from -180 to 180'),
      element,
      firstYear: year(36),
      lastYear: year(41),
    };
  }
}
