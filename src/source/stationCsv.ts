import { damagedFile } from './damagedFile.ts';
import { dayNumberIn } from './dateText.ts';
import { elementAt, RAIN } from './element.ts';
import { integerIn } from './integerIn.ts';
import { beginsWith, nextLineAt, textEnd } from './lineBytes.ts';
import type { RecordBuilder } from './recordBuilder.ts';
import type { ReadRequest, RecordLayout } from './recordLayout.ts';
import type { StationColumns } from './stationColumns.ts';
import { StationIndex } from './stationIndex.ts';
import { timeOfDay } from './timeOfDay.ts';

// One line is one value: ID,YYYYMMDD,ELEMENT,VALUE,M,Q,S,HHMM, a header line or none, nothing quoted.
const FIELDS = 8;
const LAYOUT_WORDS = 'id, date, element, value, three flags and time';
const MISSING = -9999;
const BLANK = 32;
const COMMA = 44;
const QUOTE = 34;

const isHeader = (line: string): boolean =>
  /^(ID|STATION),[^,\d]+,ELEMENT,/i.test(line) && line.split(',').length === FIELDS;

/** The CSV layout that by-station and by-year files share; only the order of their lines differs. */
export const stationCsv: RecordLayout = {
  name: 'by-station or by-year CSV (8 fields)',

  recognises: ([firstLine]) =>
    isHeader(firstLine) || /^"?[\w-]+"?,"?\d{8}"?,"?[A-Z][A-Z0-9]{3}"?,/.test(firstLine),

  read(bytes: Buffer, fileName: string, builder: RecordBuilder, { onlyStation }: ReadRequest): void {
    const only = onlyStation === undefined ? null : Buffer.from(`${onlyStation},`, 'latin1');
    const reader = new LineReader(bytes, fileName, builder);
    for (let at = 0, line = 1, next = 0; at < bytes.length; at = next, line++) {
      next = nextLineAt(bytes, at);
      const end = textEnd(bytes, at, next);
      if (end === at || (line === 1 && isHeader(bytes.toString('latin1', at, end)))) continue;
      if (only !== null && bytes[at] !== QUOTE && !beginsWith(bytes, at, end, only)) continue;
      reader.read(at, end, line);
    }
  },
};

/** Reads line after line; keeps the date of the line before, as it seldom changes. Makes no text of a sound line. */
class LineReader {
  private readonly commas = new Int32Array(FIELDS);
  private readonly stations = new StationIndex<StationColumns>();
  private date = Number.NaN;
  private dayNumber = 0;

  constructor(
    private readonly bytes: Buffer,
    private readonly fileName: string,
    private readonly builder: RecordBuilder,
  ) {}

  read(at: number, end: number, line: number): void {
    const { bytes, commas } = this;
    this.splitLine(at, end, line);
    const columns = this.stationOf(at, commas[0], line);
    const dayNumber = this.dayNumberIn(commas[0] + 1, commas[1], line);
    const elementFrom = commas[1] + 1;
    if (commas[2] - elementFrom !== 4)
      throw this.damaged(line, 3, elementFrom, commas[2], 'is no element name of 4 letters');
    const valueFrom = commas[2] + 1;
    if (valueFrom === commas[3]) return;
    const value = integerIn(bytes, valueFrom, commas[3]);
    if (Number.isNaN(value)) throw this.damaged(line, 4, valueFrom, commas[3], 'is no whole number');
    if (value === MISSING) return;
    const measurementFlag = this.flagIn(5, line);
    const qualityFlag = this.flagIn(6, line);
    const element = elementAt(bytes, elementFrom);
    columns.add(dayNumber, element, value, measurementFlag, qualityFlag);
    if (element !== RAIN) return;
    const timeFrom = commas[6] + 1;
    const time = timeOfDay((place) => bytes[timeFrom + place], end - timeFrom);
    if (!Number.isNaN(time)) columns.addRainTime(dayNumber, time);
  }

  /** Puts the end of every field into `commas`. */
  private splitLine(at: number, end: number, line: number): void {
    const { bytes, commas } = this;
    let found = 0;
    for (let i = at; i < end; i++) {
      const byte = bytes[i];
      if (byte === QUOTE) {
        throw damagedFile(
          this.fileName,
          line,
          found + 1,
          'a quote character stands in the line; this layout quotes nothing, so the file has another layout or was rewritten',
        );
      }
      if (byte !== COMMA) continue;
      if (found === FIELDS - 1) {
        throw damagedFile(
          this.fileName,
          line,
          FIELDS + 1,
          `the line has more than ${FIELDS} fields (${LAYOUT_WORDS})`,
        );
      }
      commas[found++] = i;
    }
    if (found < FIELDS - 1) {
      throw damagedFile(
        this.fileName,
        line,
        found + 1,
        `the line ends after ${found + 1} of ${FIELDS} fields (${LAYOUT_WORDS})`,
      );
    }
  }

  private stationOf(from: number, to: number, line: number): StationColumns {
    const { bytes, stations } = this;
    const known = stations.get(bytes, from, to);
    if (known !== undefined) return known;
    const id = bytes.toString('latin1', from, to);
    if (!/^[\w-]+$/.test(id)) throw this.damaged(line, 1, from, to, 'is no station id of letters and digits');
    return stations.add(bytes.subarray(from, to), this.builder.station(id));
  }

  private dayNumberIn(from: number, to: number, line: number): number {
    const date = to - from === 8 ? integerIn(this.bytes, from, to) : Number.NaN;
    if (date === this.date) return this.dayNumber;
    const dayNumber = dayNumberIn(Math.floor(date / 10_000), Math.floor(date / 100) % 100, date % 100);
    if (Number.isNaN(dayNumber)) throw this.damaged(line, 2, from, to, 'is no date written YYYYMMDD');
    this.date = date;
    this.dayNumber = dayNumber;
    return this.dayNumber;
  }

  private flagIn(field: number, line: number): number {
    const from = this.commas[field - 2] + 1;
    const to = this.commas[field - 1];
    if (to === from) return BLANK;
    if (to - from > 1) throw this.damaged(line, field, from, to, 'is no flag of one character');
    return this.bytes[from];
  }

  private damaged(line: number, field: number, from: number, to: number, what: string) {
    return damagedFile(
      this.fileName,
      line,
      field,
      `"${this.bytes.toString('latin1', from, Math.min(to, from + 40))}" ${what}`,
    );
  }
}
