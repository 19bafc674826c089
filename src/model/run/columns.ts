/** Where runs take the columns that they fill; they write every entry. */
export interface Columns {
  /** A column of that length, with whatever it held before. */
  take(length: number): Float64Array;
}

/**
 * Large buffers begin at the same place of a memory page, so that a sum written for tomorrow looks to the processor as if it
 * were tomorrow's reading, which then waits for it. Columns therefore begin some cache lines apart. [bytes]
 */
const PAGE_BYTES = 4096;
const APART_BYTES = 9 * 64;

const offsetOf = (place: number): number => (place * APART_BYTES) % PAGE_BYTES;
const bytesOf = (length: number): number => length * Float64Array.BYTES_PER_ELEMENT;

let made = 0;

/** A new column each time: for results that are kept. */
export const newColumns: Columns = {
  take(length) {
    const offset = offsetOf(++made);
    return new Float64Array(new ArrayBuffer(offset + bytesOf(length)), offset, length);
  },
};

/**
 * The same columns over and over: for a list of stations, each done with before the next begins. Fresh memory costs as
 * much as the run that fills it.
 */
export interface ReusedColumns extends Columns {
  /** Hands all columns out anew; whatever was taken before must not be read again. */
  reset(): void;
}

/** Columns to reuse; they grow to the longest asked for. */
export function reusedColumns(): ReusedColumns {
  const buffers: ArrayBuffer[] = [];
  let taken = 0;
  return {
    take(length) {
      const place = taken++;
      const offset = offsetOf(taken);
      const bytes = offset + bytesOf(length);
      if (!((buffers[place]?.byteLength ?? 0) >= bytes)) buffers[place] = new ArrayBuffer(bytes);
      return new Float64Array(buffers[place], offset, length);
    },
    reset() {
      taken = 0;
    },
  };
}
