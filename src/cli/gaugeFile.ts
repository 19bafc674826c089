import { CsvFault, type CsvRow, csvRows } from '../app/tables/csvRows.ts';
import { parseIsoDate } from '../calendar.ts';
import { DrywakeError, InvalidInputError } from '../errors.ts';
import type { GaugeDay, Irrigation } from '../schema/question.ts';
import { mmFromInches } from '../units.ts';

/** What a grower's gauge file brings to a question. */
export interface GaugeEntries {
  readonly gauge: GaugeDay[];
  readonly irrigation: Irrigation[];
}

const HINT = 'Head the columns date, rain_mm or rain_in, and where wanted irrigation_mm or irrigation_in.';

/** A column of amounts with its place and unit. */
interface AmountColumn {
  readonly at: number;
  readonly header: string;
  readonly toMm: (amount: number) => number;
}

/**
 * Rain and irrigation from the text of a CSV file: a header, then a line for each day. Dates are YYYY-MM-DD. Each
 * header says its unit (mm, in or inches), so that none is guessed. An empty cell is no reading, which is not zero.
 *
 * @throws {InvalidInputError} GAUGE_UNREADABLE naming file, line and column
 */
export function readGaugeFile(text: string, path: string): GaugeEntries {
  const refuse = (line: number, fault: string) =>
    new InvalidInputError('GAUGE_UNREADABLE', `${path}, line ${line}: ${fault}.`, {
      hint: HINT,
      details: { field: 'gauge', file: path, line },
    });
  const [header, ...rows] = linesOf(text, refuse);
  if (header === undefined) throw refuse(1, 'the file is empty');
  const names = header.cells.map((cell) => cell.toLowerCase());
  const date = names.findIndex((name) => /^(date|day)$/.test(name));
  const rain = amountColumn(names, /^(rain|rainfall|precipitation|prcp)\b/, (fault) =>
    refuse(header.line, fault),
  );
  const water = amountColumn(names, /^(irrigation|water)\b/, (fault) => refuse(header.line, fault));
  if (date < 0) throw refuse(header.line, 'no column is headed "date"');
  if (rain === null && water === null)
    throw refuse(header.line, 'no column is headed "rain" or "irrigation"');

  const entries: GaugeEntries = { gauge: [], irrigation: [] };
  const seen = new Set<string>();
  for (const { line, cells } of rows) {
    const day = cells[date];
    try {
      parseIsoDate(day);
    } catch (error) {
      if (!(error instanceof DrywakeError)) throw error;
      throw refuse(line, `"${day}" is no date written YYYY-MM-DD`);
    }
    if (seen.has(day)) throw refuse(line, `${day} stands twice`);
    seen.add(day);
    const rainMm = amountIn(cells, rain, (fault) => refuse(line, fault));
    const mm = amountIn(cells, water, (fault) => refuse(line, fault));
    if (rainMm !== null) entries.gauge.push({ date: day, rainMm });
    if (mm !== null && mm > 0) entries.irrigation.push({ date: day, mm });
  }
  return entries;
}

function linesOf(text: string, refuse: (line: number, fault: string) => InvalidInputError): CsvRow[] {
  try {
    return csvRows(text, { trim: true, cells: 'the head’s' });
  } catch (error) {
    if (!(error instanceof CsvFault)) throw error;
    throw refuse(error.line, error.message);
  }
}

function amountColumn(
  names: readonly string[],
  kind: RegExp,
  refuse: (fault: string) => InvalidInputError,
): AmountColumn | null {
  const words = names.map((name) => name.replace(/[_()[\]]+/g, ' ').trim());
  const at = words.findIndex((name) => kind.test(name));
  if (at < 0) return null;
  const unit = /\b(mm|in|inch|inches)$/.exec(words[at])?.[1];
  if (unit === undefined) throw refuse(`the header "${names[at]}" does not say whether it is mm or inches`);
  return { at, header: names[at], toMm: unit === 'mm' ? (amount) => amount : mmFromInches };
}

/** An amount in millimetres; null where the column or the cell is empty. */
function amountIn(
  cells: readonly string[],
  column: AmountColumn | null,
  refuse: (fault: string) => InvalidInputError,
): number | null {
  const cell = column === null ? '' : cells[column.at];
  if (column === null || cell === '') return null;
  const amount = Number(cell);
  if (!Number.isFinite(amount) || amount < 0)
    throw refuse(`"${cell}" under "${column.header}" is no amount of water`);
  return column.toMm(amount);
}
