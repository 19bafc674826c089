import type { BulkLayout } from './bulkLayout.ts';
import { quoted } from './quoted.ts';
import { VALUE_COLUMNS } from './weatherSchema.ts';

// Marks inside a value while it is pivoted; a whole number of at most nine digits, doubled, reaches neither.
const DROPPED = -2_147_483_648;
const DAMAGED = 2_147_483_647;
const MOST_VALUE = 999_999_999;

/** Element names of the layout, in the order of the value columns. */
const ELEMENTS = ['PRCP', 'TMAX', 'TMIN', 'MDPR', 'DAPR'] as const;

/** What a real value can be, per value column; the same bounds as the record readers'. */
const PLAUSIBLE = [
  'BETWEEN 0 AND 20000',
  'BETWEEN -700 AND 700',
  'BETWEEN -700 AND 700',
  '>= 0',
  '>= 1',
] as const;

const each = (text: (column: string, code: number) => string, separator: string): string =>
  VALUE_COLUMNS.map(text).join(separator);

/** The lines of a file, all fields as text; a line of another number of fields is an error. */
export const linesOf = (path: string, { header, newLine, compression }: BulkLayout): string =>
  `read_csv(${quoted(path)}, auto_detect = false, header = ${header}, delim = ',', quote = '', escape = '',
     new_line = '${newLine}', compression = '${compression}', max_line_size = 65536,
     columns = {'id': 'VARCHAR', 'date': 'VARCHAR', 'element': 'VARCHAR', 'text': 'VARCHAR', 'm': 'VARCHAR',
                'q': 'VARCHAR', 's': 'VARCHAR', 'time': 'VARCHAR'})`;

/**
 * One row a line: `code` = value column of the element, −1 not used, −2 no value; `v` the value; `bad` where the
 * record readers would not take the line as it stands (they then judge the file).
 */
const parsedLines = (lines: string): string => `
  SELECT *, TRY_CAST(text AS INTEGER) AS v, q IS NOT NULL AND q <> ' ' AS flagged,
    TRY_CAST(text AS INTEGER)::VARCHAR IS DISTINCT FROM text OR strlen(element) <> 4 OR element IS NULL
      OR contains(element, '"') OR coalesce(strlen(q) > 1 OR q = '"', false)
      OR coalesce(strlen(m) > 1 OR m = '"', false) AS bad,
    CASE WHEN text IS NULL OR text = '-9999' THEN -2
      ${ELEMENTS.map((name, code) => `WHEN element = '${name}' THEN ${code}`).join(' ')} ELSE -1 END::TINYINT AS code
  FROM ${lines}`;

/** Every written date of the years a record can hold, so that dates are checked and turned by one join. */
export const CALENDAR = `CREATE TEMP TABLE calendar AS
  SELECT strftime(day, '%Y%m%d') AS date, (day - DATE '1970-01-01')::INTEGER AS day_number
  FROM (SELECT unnest(generate_series(DATE '1600-01-01', DATE '2199-12-31', INTERVAL 1 DAY))::DATE AS day)`;

/**
 * Pivots a file to one row per station and day before anything is sorted. A value is carried doubled, with the
 * presumed-zero mark in its last bit, so that one maximum per element tells value, flag and damage alike.
 * `repeats` marks days on which an element stands twice: {@link repeatedDays} reads those again in file order.
 */
export const pivotedFile = (path: string, layout: BulkLayout): string => `
  CREATE OR REPLACE TEMP TABLE staged AS
  SELECT id, date, day_number,
    ${each((column, code) => `CASE WHEN ${value(column)} ${PLAUSIBLE[code]} THEN ${value(column)} END AS ${column}`, ',\n    ')},
    values_read::UINTEGER AS values_read,
    (${each((column) => `coalesce(${column} = ${DROPPED}, false)::INTEGER`, ' + ')})::UINTEGER AS dropped_by_flag,
    (${each((column, code) => `coalesce(NOT (${value(column)} ${PLAUSIBLE[code]}), false)::INTEGER`, ' + ')})::UINTEGER
      AS implausible,
    coalesce(${value('rain_tenths_mm')} ${PLAUSIBLE[0]} AND rain_tenths_mm & 1 = 1, false)::UINTEGER AS presumed_zero,
    0::UINTEGER AS duplicated,
    ignored_elements::UINTEGER AS ignored_elements,
    values_read <> (${each((column) => `(${column} IS NOT NULL)::INTEGER`, ' + ')}) AS repeats,
    day_number IS NULL
      OR ${each((column) => `coalesce(${column} = ${DAMAGED} OR abs(${value(column)}) > ${MOST_VALUE}, false)`, ' OR ')}
      AS damaged
  FROM (
    SELECT id, date,
      ${each((column, code) => `max(kept) FILTER (code = ${code}) AS ${column}`, ', ')},
      count(kept) AS values_read, count(*) FILTER (code = -1) AS ignored_elements
    FROM (
      SELECT id, date, CASE WHEN bad THEN 0 ELSE code END::TINYINT AS code,
        CASE WHEN bad THEN ${DAMAGED} WHEN code < 0 THEN NULL WHEN flagged THEN ${DROPPED}
          ELSE v * 2 + coalesce(m = 'P', false)::INTEGER END AS kept
      FROM (${parsedLines(linesOf(path, layout))})
    )
    GROUP BY id, date
  ) LEFT JOIN calendar USING (date)`;

const value = (column: string): string => `(nullif(${column}, ${DROPPED}) >> 1)`;

/** The days on which an element stands twice, read again: the last line in the file counts, dropped or not. */
export const repeatedDays = (path: string, layout: BulkLayout): string => {
  const fits = `CASE code ${PLAUSIBLE.map((range, code) => `WHEN ${code} THEN v ${range}`).join(' ')} END`;
  return `
  INSERT INTO staged
  SELECT id, date, any_value(day_number),
    ${each((_, code) => `arg_max_null(CASE WHEN NOT flagged AND fits THEN v END, line) FILTER (code = ${code})`, ', ')},
    count(*), count(*) FILTER (flagged), count(*) FILTER (NOT flagged AND NOT fits),
    count(*) FILTER (NOT flagged AND fits AND code = 0 AND m = 'P'), count(*) - count(DISTINCT code),
    any_value(ignored_elements), false, false
  FROM (
    SELECT l.*, d.day_number, d.ignored_elements, ${fits} AS fits
    FROM (SELECT *, row_number() OVER () AS line FROM (${parsedLines(linesOf(path, layout))})) l
    JOIN repeated d USING (id, date)
    WHERE code >= 0
  )
  GROUP BY id, date`;
};
