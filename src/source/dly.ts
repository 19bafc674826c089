import { dayNumberOf, daysInMonth } from '../calendar.ts';
import { damagedFile } from './damagedFile.ts';
import { elementAt } from './element.ts';
import { integerIn } from './integerIn.ts';
import { beginsWith, nextLineAt, textEnd } from './lineBytes.ts';
import type { RecordBuilder } from './recordBuilder.ts';
import type { ReadRequest, RecordLayout } from './recordLayout.ts';
import { FIRST_YEAR, LAST_YEAR } from './recordYears.ts';

// One line is one station, month and element: id 1-11, year 12-15, month 16-17, element 18-21, then 31 groups
// of value (5), measurement flag, quality flag and source flag. Source: the data set's own readme, section III.
const ID_LENGTH = 11;
const YEAR_AT = 11;
const MONTH_AT = 15;
const ELEMENT_AT = 17;
const VALUES_AT = 21;
const GROUP = 8;
const LINE_LENGTH = VALUES_AT + 31 * GROUP;
/** A writer may leave off the blank flags of day 31. */
const SHORTEST_LINE = LINE_LENGTH - 3;
const MISSING = -9999;
const BLANK = 32;

/** The fixed-width layout of one file per station. */
export const dly: RecordLayout = {
  name: 'fixed-width daily (.dly)',

  recognises: ([firstLine]) => /^[A-Za-z0-9_-]{11}\d{4}[ \d]\d[A-Z][A-Z0-9*]{3}/.test(firstLine),

  read(bytes: Buffer, fileName: string, builder: RecordBuilder, { onlyStation }: ReadRequest): void {
    const only = onlyStation === undefined ? null : Buffer.from(onlyStation, 'latin1');
    for (let at = 0, line = 1, next = 0; at < bytes.length; at = next, line++) {
      next = nextLineAt(bytes, at);
      const end = textEnd(bytes, at, next);
      if (end === at || (only !== null && !beginsWith(bytes, at, end, only))) continue;
      readLine(bytes, at, end, line, fileName, builder);
    }
  },
};

function readLine(
  bytes: Buffer,
  at: number,
  end: number,
  line: number,
  fileName: string,
  builder: RecordBuilder,
): void {
  const damaged = (column: number, what: string) => damagedFile(fileName, line, column, what);
  const length = end - at;
  if (length < SHORTEST_LINE) {
    throw damaged(
      length + 1,
      `the line ends after ${length} characters; a line of this layout has ${LINE_LENGTH}`,
    );
  }
  for (let i = at + LINE_LENGTH; i < end; i++) {
    if (bytes[i] !== BLANK) throw damaged(i - at + 1, `text goes on beyond character ${LINE_LENGTH}`);
  }
  const text = (from: number, to: number) => bytes.toString('latin1', at + from, at + to);
  const id = text(0, ID_LENGTH);
  if (!/^[\w-]+$/.test(id)) throw damaged(1, `"${id}" is no station id of ${ID_LENGTH} letters and digits`);
  const year = integerIn(bytes, at + YEAR_AT, at + MONTH_AT);
  if (!(year >= FIRST_YEAR && year <= LAST_YEAR)) {
    throw damaged(YEAR_AT + 1, `"${text(YEAR_AT, MONTH_AT)}" is no year from ${FIRST_YEAR} to ${LAST_YEAR}`);
  }
  const month = integerIn(bytes, at + MONTH_AT, at + ELEMENT_AT);
  if (!(month >= 1 && month <= 12)) {
    throw damaged(MONTH_AT + 1, `"${text(MONTH_AT, ELEMENT_AT)}" is no month from 1 to 12`);
  }
  const element = elementAt(bytes, at + ELEMENT_AT);
  const monthDays = daysInMonth(year, month);
  const dayBefore = dayNumberOf(year, month, 1) - 1;
  const columns = builder.station(id);
  for (let day = 1; day <= 31; day++) {
    const column = VALUES_AT + (day - 1) * GROUP;
    const value = integerIn(bytes, at + column, at + column + 5);
    if (value === MISSING) continue;
    if (Number.isNaN(value)) {
      throw damaged(column + 1, `"${text(column, column + 5)}" is no whole number`);
    }
    if (day > monthDays) {
      throw damaged(
        column + 1,
        `month ${month} of ${year} has no day ${day}, yet its value is ${value} where ${MISSING} belongs`,
      );
    }
    const flagsAt = at + column + 5;
    const measurementFlag = flagsAt < end ? bytes[flagsAt] : BLANK;
    const qualityFlag = flagsAt + 1 < end ? bytes[flagsAt + 1] : BLANK;
    columns.add(dayBefore + day, element, value, measurementFlag, qualityFlag);
  }
}
