import type { BulkLayout } from './bulkLayout.ts';
import { quoted } from './quoted.ts';
import { RAIN_TIME, VALUE_COLUMNS } from './weatherSchema.ts';

// Marks inside a value while it is staged; a whole number of at most nine digits, doubled, reaches neither.
const DROPPED = -2_147_483_648;
const DAMAGED = 2_147_483_647;
const MOST_VALUE = 999_999_999;
const MISSING = -9999;

/** Element names of the layout, in the order of the value columns. */
const ELEMENTS = ['PRCP', 'TMAX', 'TMIN', 'MDPR', 'DAPR'] as const;

/** Bounds of a real value per value column, the same as the record readers'; none where null. */
const PLAUSIBLE: readonly (readonly [number, number | null])[] = [
  [0, 20_000],
  [-700, 700],
  [-700, 700],
  [0, null],
  [1, null],
];

const each = (text: (column: string, code: number) => string, separator: string): string =>
  VALUE_COLUMNS.map(text).join(separator);

/** Whether a staged value is accepted: neither dropped by its flag nor impossible. */
const isAccepted = (column: string, code: number): string => {
  const [low, high] = PLAUSIBLE[code];
  return `${column} BETWEEN ${2 * low} AND ${high === null ? DAMAGED - 1 : 2 * high + 1}`;
};

/** The lines of a file, all fields as text; a line of another number of fields is an error. */
const linesOf = (path: string, { header, newLine, compression }: BulkLayout): string =>
  `read_csv(${quoted(path)}, auto_detect = false, header = ${header}, delim = ',', quote = '', escape = '',
     new_line = '${newLine}', compression = '${compression}', max_line_size = 65536,
     columns = {'id': 'VARCHAR', 'day': 'VARCHAR', 'element': 'VARCHAR', 'text': 'VARCHAR', 'm': 'VARCHAR',
                'q': 'VARCHAR', 's': 'VARCHAR', 'time': 'VARCHAR'})`;

/**
 * One row a line: `date` as a number YYYYMMDD; `code` = value column of the element, −1 not used; `v` the value; `bad`
 * where the record readers would not take the line as it stands, or a flag is a blank (they then judge the file).
 * Eight characters that make a number of a real date are eight digits.
 */
const parsedLines = (path: string, layout: BulkLayout): string => `
  SELECT *, CASE
      WHEN v::VARCHAR IS DISTINCT FROM text OR strlen(day) <> 8 THEN true
      WHEN (q IS NOT NULL OR m IS NOT NULL) AND (strlen(q) > 1 OR q < '#' OR strlen(m) > 1 OR m < '#') THEN true
      WHEN code = -1 THEN element IS NULL OR strlen(element) <> 4 OR contains(element, '"') END AS bad
  FROM (
    SELECT id, day, TRY_CAST(day AS INTEGER) AS date, element, text, m, q, time, TRY_CAST(text AS INTEGER) AS v,
      CASE element ${ELEMENTS.map((name, code) => `WHEN '${name}' THEN ${code}`).join(' ')} ELSE -1 END::TINYINT AS code
    FROM ${linesOf(path, layout)}
  )`;

/** Whether a parsed line holds a value. */
const HAS_VALUE = `v <> ${MISSING}`;

/** The hour field of a line with a rain value, as it stands; null on all other lines. */
const LINE_TIME = `CASE WHEN code = 0 AND ${HAS_VALUE} THEN time END`;

/** Whether a text is a time of day, HHMM; dear, so asked of the few different texts of a file rather than of every line. */
const isTimeOfDay = (text: string): string =>
  `regexp_full_match(${text}, '([01][0-9]|2[0-3])[0-5][0-9]|2400')`;

/**
 * Pivots a file to one row per station and day before anything is sorted. A value is carried doubled, with the
 * presumed-zero mark in its last bit, so that one maximum per element tells value, flag and damage alike.
 * `rain_time` is the hour field beside the day's one rain value; where there are two, the day is read again.
 * `values_read` counts the day's values, and exceeds its filled columns where an element stands twice.
 */
export const pivotedFile = (path: string, layout: BulkLayout): string => `
  CREATE OR REPLACE TEMP TABLE staged AS
  SELECT id, date, ${each((column, code) => `max(kept) FILTER (code = ${code}) AS ${column}`, ', ')}, any_value(rain_time) AS rain_time,
    count(kept)::USMALLINT AS values_read, count(ignored)::USMALLINT AS ignored_elements
  FROM (
    SELECT id, date, CASE WHEN bad THEN 0 ELSE code END::TINYINT AS code,
      CASE WHEN code = -1 AND ${HAS_VALUE} THEN 1 END AS ignored, ${LINE_TIME} AS rain_time,
      CASE WHEN bad THEN ${DAMAGED} WHEN code = -1 OR v IS NULL OR v = ${MISSING} THEN NULL
        WHEN q IS NOT NULL THEN ${DROPPED} WHEN m = 'P' THEN v * 2 + 1 ELSE v * 2 END AS kept
    FROM (${parsedLines(path, layout)})
  )
  GROUP BY id, date`;

/** Whether an element stands twice on a staged day; null where that is settled already. */
const REPEATS = `values_read <> ${each((column) => `(${column} IS NOT NULL)::INTEGER`, ' + ')}`;

/** Day numbers of the staged dates; null where there is no such date. */
export const STAGED_DATES = `
  CREATE OR REPLACE TEMP TABLE staged_date AS
  SELECT date, CASE WHEN date BETWEEN 16000101 AND 21991231
    THEN (try_strptime(date::VARCHAR, '%Y%m%d')::DATE - DATE '1970-01-01')::INTEGER END AS day_number
  FROM (SELECT DISTINCT date FROM staged)`;

/** Times of day, HHMM, of the staged hour fields; null where a field is none. A file has few different ones. */
export const STAGED_TIMES = `
  CREATE OR REPLACE TEMP TABLE staged_time AS
  SELECT rain_time, CASE WHEN ${isTimeOfDay('rain_time')} THEN rain_time::INTEGER END AS ${RAIN_TIME}
  FROM (SELECT DISTINCT rain_time FROM staged WHERE rain_time IS NOT NULL)`;

const ANY = `coalesce(${VALUE_COLUMNS.join(', ')}) IS NOT NULL`;

/** The accepted value of a staged column, else null. */
const value = (column: string, code: number): string =>
  `CASE WHEN ${isAccepted(column, code)} THEN ${column} >> 1 END AS ${column}`;

const isImpossible = (column: string, code: number): string =>
  `coalesce(NOT (${isAccepted(column, code)}) AND ${column} <> ${DROPPED}, false)`;
const extremes = (text: (least: string, most: string, code: number) => string): string =>
  each((column, code) => text(`min(nullif(${column}, ${DROPPED}))`, `max(${column})`, code), ' OR ');

/** Whether a day is damaged, an element stands twice on a day, a value is impossible: all told from extremes and sums. */
export const STAGED_FAULTS = `
  SELECT coalesce(${extremes((least, most) => `coalesce(${least} < ${-2 * MOST_VALUE} OR ${most} > ${2 * MOST_VALUE + 1}, false)`)}, false),
    coalesce(sum(values_read), 0) <> ${each((column) => `count(${column})`, ' + ')},
    ${extremes((least, most, code) => {
      const [low, high] = PLAUSIBLE[code];
      return `coalesce(${least} < ${2 * low}${high === null ? '' : ` OR ${most} > ${2 * high + 1}`}, false)`;
    })}
  FROM staged`;

/** Stations with impossible values, and how many. */
export const IMPOSSIBLE_COUNTS = `
  SELECT id, sum(${each((column, code) => `${isImpossible(column, code)}::INTEGER`, ' + ')}) AS implausible
  FROM staged WHERE ${each(isImpossible, ' OR ')} GROUP BY id`;

/** One row a station with the counts of its staged days. */
export const STATION_COUNTS = `
  CREATE OR REPLACE TEMP TABLE station_count AS
  SELECT id, min(CASE WHEN ${ANY} THEN date END) AS first_date, max(CASE WHEN ${ANY} THEN date END) AS last_date,
    ${each((column) => `count(${column})`, ' + ')} AS accepted, count(${VALUE_COLUMNS[0]}) AS rain_days,
    count(${VALUE_COLUMNS[1]} + ${VALUE_COLUMNS[2]}) AS temperature_days, count(presumed) AS presumed_zero,
    coalesce(sum(values_read), 0) AS values_read, sum(ignored_elements) AS ignored_elements
  FROM (
    SELECT id, date, ${each(value, ', ')}, values_read, ignored_elements,
      CASE WHEN ${isAccepted(VALUE_COLUMNS[0], 0)} AND ${VALUE_COLUMNS[0]} & 1 = 1 THEN 1 END AS presumed
    FROM staged
  ) GROUP BY id`;

/** Accepted values of the stations that have keys, by station and day, and the time of the rain; all others null. */
export const ACCEPTED_DAYS = `
  SELECT i.station_key, t.day_number,
    ${each(value, ', ')}, CASE WHEN ${isAccepted(VALUE_COLUMNS[0], 0)} THEN ${RAIN_TIME} END AS ${RAIN_TIME}
  FROM staged s JOIN staged_date t USING (date) JOIN incoming_station i USING (id) LEFT JOIN staged_time USING (rain_time)`;

/**
 * The days on which an element stands twice, read again in file order: the last line counts, dropped or not. Makes
 * `settled`, a row for each such day with its accepted values and its counts.
 */
export const repeatedDays = (path: string, layout: BulkLayout): string => {
  const fits = each((_, code) => {
    const [low, high] = PLAUSIBLE[code];
    return `WHEN ${code} THEN v >= ${low}${high === null ? '' : ` AND v <= ${high}`}`;
  }, ' ');
  return `
  CREATE OR REPLACE TEMP TABLE settled AS
  SELECT id, date,
    ${each((column, code) => `arg_max_null(CASE WHEN q IS NULL AND fits THEN v END, line) FILTER (code = ${code}) AS ${column}`, ', ')},
    max(${LINE_TIME}) FILTER (${isTimeOfDay('time')}) AS rain_time, count(*) AS values_read, count(*) FILTER (q IS NOT NULL) AS dropped_by_flag,
    count(*) FILTER (q IS NULL AND NOT fits) AS implausible,
    count(*) FILTER (q IS NULL AND fits AND code = 0 AND m = 'P') AS presumed_zero,
    count(*) - count(DISTINCT code) AS duplicated, any_value(ignored_elements) AS ignored_elements
  FROM (
    SELECT l.*, d.ignored_elements, CASE code ${fits} END AS fits
    FROM (SELECT *, row_number() OVER () AS line FROM (${parsedLines(path, layout)})) l
    JOIN (SELECT id, date, ignored_elements FROM staged WHERE ${REPEATS}) d USING (id, date)
    WHERE code >= 0 AND ${HAS_VALUE}
  )
  GROUP BY id, date`;
};

/** Puts the settled days in the place of the repeated ones, marked as counted already. */
export const PLACE_SETTLED = [
  `DELETE FROM staged WHERE ${REPEATS}`,
  `INSERT INTO staged SELECT id, date, ${each((column) => `${column} * 2`, ', ')}, rain_time, NULL, ignored_elements FROM settled`,
];
