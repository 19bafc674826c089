/** Where runs take the columns that they fill; they write every entry. */
export interface Columns {
  /** A column of that length, with whatever it held before. */
  take(length: number): Float64Array;
}

const bytesOf = (length: number): number => length * Float64Array.BYTES_PER_ELEMENT;

/** A new column each time: for results that are kept. */
export const newColumns: Columns = {
  take: (length) => new Float64Array(length),
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
      const bytes = bytesOf(length);
      if (!((buffers[place]?.byteLength ?? 0) >= bytes)) buffers[place] = new ArrayBuffer(bytes);
      return new Float64Array(buffers[place], 0, length);
    },
    reset() {
      taken = 0;
    },
  };
}
