import { ABSENT } from '../schema/codes.ts';
import type { Reading, Station, StationRecord } from '../schema/weather.ts';
import { ELEMENTS, isPlausible, NOT_USED, RAIN } from './element.ts';

/** A value stood here but was dropped; becomes {@link ABSENT} at the end. Keeps a later repeat countable. */
const DROPPED = ABSENT + 1;
const FIRST_CAPACITY = 32;
/** Sentences kept of one station; a file that has more to say says the same thing of every line. */
const MOST_NOTES = 100;
const BLANK = 32;
const FLAG_PRESUMED_ZERO = 80; // 'P'

/** The growing columns of one station while its lines are read, in any order of days. */
export class StationColumns {
  private base = 0;
  private capacity = 0;
  /** Null where the element has had no value yet: most stations measure rain alone. */
  private readonly columns: (Int32Array | null)[] = ELEMENTS.map(() => null);
  /** Null where no line has said a time. */
  private times: Int32Array | null = null;
  private readonly reading: Reading = {
    valuesRead: 0,
    droppedByFlag: 0,
    implausible: 0,
    presumedZero: 0,
    duplicated: 0,
    ignoredElements: 0,
    notes: [],
  };
  readonly sources = new Set<string>();

  /** @param lend is told of every further cell that the columns take, and may refuse it */
  constructor(private readonly lend: (cells: number) => void = () => undefined) {}

  /**
   * Takes in one value that is not missing.
   * @param element column of the element, or NOT_USED
   * @param value [0.1 mm, 0.1 °C or d]
   * @param measurementFlag character code, blank (32) where none
   * @param qualityFlag character code, blank (32) where none
   */
  add(dayNumber: number, element: number, value: number, measurementFlag: number, qualityFlag: number): void {
    const { reading } = this;
    if (element === NOT_USED) {
      reading.ignoredElements++;
      return;
    }
    reading.valuesRead++;
    const index = this.indexOf(dayNumber);
    const column = this.columns[element] ?? this.firstColumn(element);
    if (column[index] !== ABSENT) reading.duplicated++;
    if (qualityFlag !== BLANK) {
      reading.droppedByFlag++;
      column[index] = DROPPED;
    } else if (!isPlausible(element, value)) {
      reading.implausible++;
      column[index] = DROPPED;
    } else {
      if (element === RAIN && measurementFlag === FLAG_PRESUMED_ZERO) reading.presumedZero++;
      column[index] = value;
    }
  }

  /** Takes in the time at which a day's rain was read; of several the latest in the day counts. [HHMM] */
  addRainTime(dayNumber: number, timeHhmm: number): void {
    const index = this.indexOf(dayNumber);
    this.times ??= this.newColumn();
    if (timeHhmm > this.times[index]) this.times[index] = timeHhmm;
  }

  /** Values that a wide table holds in columns of elements that are not used. */
  ignore(values: number): void {
    this.reading.ignoredElements += values;
  }

  /** Keeps a sentence about how values were read; the same one counts once. */
  note(sentence: string): void {
    const { notes } = this.reading;
    if (notes.length < MOST_NOTES && !notes.includes(sentence)) notes.push(sentence);
  }

  /** The record from its first to its last day with an accepted value, or null where there is none. */
  finish(station: Station): StationRecord | null {
    let first = this.capacity;
    let last = -1;
    for (const column of this.columns) {
      if (column === null) continue;
      for (let i = 0; i < column.length; i++) {
        if (column[i] === DROPPED) column[i] = ABSENT;
        if (column[i] === ABSENT) continue;
        if (i < first) first = i;
        if (i > last) last = i;
      }
    }
    if (last < 0) return null;
    const [rainTenthsMm, maxTempTenthsC, minTempTenthsC, multiDayRainTenthsMm, multiDayCount] =
      this.columns.map(
        (column) => column?.slice(first, last + 1) ?? new Int32Array(last + 1 - first).fill(ABSENT),
      );
    const rainTimeHhmm = this.timesOf(rainTenthsMm, first);
    return {
      station,
      firstDay: this.base + first,
      rainTenthsMm,
      maxTempTenthsC,
      minTempTenthsC,
      multiDayRainTenthsMm,
      multiDayCount,
      ...(rainTimeHhmm === null ? {} : { rainTimeHhmm }),
      reading: { ...this.reading, notes: [...this.reading.notes] },
      source: [...this.sources].join('; '),
    };
  }

  /** Times of the days with an accepted rain value; null where there are none. */
  private timesOf(rainTenthsMm: Int32Array, first: number): Int32Array | null {
    const { times } = this;
    if (times === null) return null;
    const own = rainTenthsMm.map((rain, day) => (rain === ABSENT ? ABSENT : times[first + day]));
    return own.some((time) => time !== ABSENT) ? own : null;
  }

  private indexOf(dayNumber: number): number {
    const index = dayNumber - this.base;
    if (index >= 0 && index < this.capacity) return index;
    this.makeRoomFor(dayNumber);
    return dayNumber - this.base;
  }

  private makeRoomFor(dayNumber: number): void {
    const { base, capacity } = this;
    const before = capacity > 0 && dayNumber < base ? Math.max(base - dayNumber, capacity) : 0;
    const after = capacity === 0 ? FIRST_CAPACITY : Math.max(dayNumber - (base + capacity) + 1, capacity);
    this.base = capacity === 0 ? dayNumber : base - before;
    this.capacity = capacity + (before > 0 ? before : after);
    for (const [element, column] of this.columns.entries()) {
      if (column === null) continue;
      this.firstColumn(element).set(column, before);
      this.lend(-column.length);
    }
    if (this.times !== null) {
      const times = this.newColumn();
      times.set(this.times, before);
      this.lend(-this.times.length);
      this.times = times;
    }
  }

  private firstColumn(element: number): Int32Array {
    const column = this.newColumn();
    this.columns[element] = column;
    return column;
  }

  private newColumn(): Int32Array {
    this.lend(this.capacity);
    return new Int32Array(this.capacity).fill(ABSENT);
  }
}
