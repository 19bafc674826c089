import { InvalidInputError } from '../errors.ts';
import { type CsvRow, CsvTable } from './csvTable.ts';
import { dateOrder, gaugeDay } from './dateOrder.ts';
import { dayNumberIn } from './dateText.ts';
import { MAX_TEMP, MIN_TEMP, RAIN } from './element.ts';
import type { GaugeColumns } from './gaugeColumns.ts';
import { type GaugeHead, gaugeHead } from './gaugeHead.ts';
import { gaugeUnits } from './gaugeUnits.ts';
import { numberOf } from './numberText.ts';
import type { RecordBuilder } from './recordBuilder.ts';
import type { ReadRequest, RecordLayout } from './recordLayout.ts';
import { UnitEvidence } from './unitEvidence.ts';
import { rainTenths, tempTenths } from './unitSystem.ts';

const BLANK = 32;
const CORRECT_IT = 'Correct the line in the file and read it again.';
const MISSING_WORDS = new Set(['na', 'n/a', 'nan', 'null', 'missing', 'm', '-', '--', '-9999', '-9999.0']);
const TRACE_WORDS = new Set(['t', 'tr', 'trace']);

/** A grower's own file: a date and the rain on each line, perhaps temperatures, under a header with names of any kind. */
export const gaugeCsv: RecordLayout = {
  name: 'gauge CSV (a header that names a date and rain)',

  recognises: (firstLines) => gaugeHead(firstLines) !== null,

  read(bytes: Buffer, fileName: string, builder: RecordBuilder, request: ReadRequest): void {
    const head = gaugeHead(bytes.toString('utf8', 0, HEAD_BYTES).split(/\r?\n/));
    if (head === null) return;
    const columns = columnsOf(head, fileName);
    const id = columns.stationAt < 0 ? (head.stationId ?? request.station) : undefined;
    if (request.onlyStation !== undefined && columns.stationAt < 0 && id !== request.onlyStation) return;
    if (columns.stationAt < 0 && id === undefined) throw unnamed(fileName);
    const style = { separator: head.separator, headerLine: head.headerLine, hint: CORRECT_IT };
    const table = new CsvTable(bytes, fileName, style);
    if (id === undefined && !holds(table, columns.stationAt, request.onlyStation)) return;
    new GaugeReader(table, columns, head, fileName, builder, request).read(id);
  },
};

const HEAD_BYTES = 16_384;

/** Whether a line of that station stands in the table; true where none is asked for. */
function holds(table: CsvTable, stationAt: number, stationId: string | undefined): boolean {
  if (stationId === undefined) return true;
  for (const { fields } of table.rows()) if (fields[stationAt] === stationId) return true;
  return false;
}

function columnsOf({ found }: GaugeHead, fileName: string): GaugeColumns {
  if ('columns' in found) return found.columns;
  const rivals = found.rivals.map((name) => `"${name}"`).join(' and ');
  throw new InvalidInputError(
    'COLUMNS_AMBIGUOUS',
    `${fileName}: the columns ${rivals} may hold the same thing, and one alone can be read.`,
    {
      hint: 'Take the other out of the file, or rename it.',
      details: { file: fileName, choices: found.rivals },
    },
  );
}

const unnamed = (fileName: string): InvalidInputError =>
  new InvalidInputError('STATION_UNNAMED', `${fileName} does not say which station its values come from.`, {
    hint: `Name it, for instance --as-station ${fileName.replace(/\..*$/, '').replaceAll(/[^\w-]+/g, '-')}.`,
    details: { file: fileName },
  });

class GaugeReader {
  private missing = 0;
  private traces = 0;
  private readonly decimalComma: boolean;

  constructor(
    private readonly table: CsvTable,
    private readonly columns: GaugeColumns,
    private readonly head: GaugeHead,
    private readonly fileName: string,
    private readonly builder: RecordBuilder,
    private readonly request: ReadRequest,
  ) {
    this.decimalComma = head.separator !== ',';
  }

  /** @param fixedId the file's one station; undefined where a column names it */
  read(fixedId: string | undefined): void {
    const { table, columns, head, fileName, builder, request } = this;
    const dates = columns.dateAt.length === 1 ? this.dateTexts(columns.dateAt[0]) : [];
    const { order, note: orderNote } = dateOrder(dates, request.dates, fileName);
    const units = gaugeUnits(columns, head.header, this.evidence(), request.units, fileName);
    const ids = new Set<string>();
    for (const row of table.rows()) {
      const id = fixedId ?? row.fields[columns.stationAt];
      if (request.onlyStation !== undefined && id !== request.onlyStation) continue;
      const idColumn = Math.max(columns.stationAt, 0) + 1;
      if (!/^[\w-]+$/.test(id)) {
        throw table.damaged(row.line, idColumn, `"${id}" is no station id of letters, digits, - and _`);
      }
      ids.add(id);
      const dayNumber = this.dayOf(row, order);
      const station = builder.station(id);
      const add = (at: number, element: number, inTenths: (value: number) => number) => {
        const value = at < 0 ? null : this.valueIn(row, at, element);
        if (value !== null) station.add(dayNumber, element, inTenths(value), BLANK, BLANK);
      };
      add(columns.rainAt, RAIN, (value) => rainTenths(value, units.rain));
      add(columns.maxTempAt, MAX_TEMP, (value) => tempTenths(value, units.temperature));
      add(columns.minTempAt, MIN_TEMP, (value) => tempTenths(value, units.temperature));
    }
    for (const id of ids) {
      builder.place(id, head.place);
      for (const note of [this.columnsNote(), units.note, orderNote, ...this.wordNotes(fixedId)]) {
        if (note !== null) builder.note(id, note);
      }
    }
  }

  private *dateTexts(at: number): Generator<{ text: string; line: number }> {
    for (const { line, fields } of this.table.rows()) yield { text: fields[at], line };
  }

  private evidence(): UnitEvidence {
    const { rainAt, maxTempAt, minTempAt } = this.columns;
    const evidence = new UnitEvidence();
    for (const { line, fields } of this.table.rows()) {
      for (const at of [rainAt, maxTempAt, minTempAt]) {
        const text = at < 0 ? '' : this.pointed(fields[at]);
        const value = numberOf(text);
        if (Number.isNaN(value) || MISSING_WORDS.has(text)) continue;
        (at === rainAt ? evidence.rain : evidence.temperature).add(text, value, line);
      }
    }
    return evidence;
  }

  private dayOf({ line, fields }: CsvRow, order: ReturnType<typeof dateOrder>['order']): number {
    const { dateAt } = this.columns;
    const texts = dateAt.map((at) => fields[at]);
    const dayNumber =
      texts.length === 1
        ? gaugeDay(texts[0], order)
        : dayNumberIn(...(texts.map(numberOf) as [number, number, number]));
    if (!Number.isNaN(dayNumber)) return dayNumber;
    const how =
      texts.length > 1
        ? 'year, month and day of an existing date'
        : `a date ${order === null ? 'such as 2020-03-04' : `written ${order} with a year of four digits, or as 2020-03-04`}`;
    throw this.table.damaged(line, dateAt[0] + 1, `"${texts.join(' ')}" is not ${how}`);
  }

  /** The number in a field; null where it says that there is none. */
  private valueIn({ line, fields }: CsvRow, at: number, element: number): number | null {
    const text = fields[at];
    if (text === '') return null;
    const word = text.toLowerCase();
    if (MISSING_WORDS.has(word)) {
      this.missing++;
      return null;
    }
    if (element === RAIN && TRACE_WORDS.has(word)) {
      this.traces++;
      return 0;
    }
    const value = numberOf(this.pointed(text));
    if (Number.isNaN(value)) throw this.table.damaged(line, at + 1, `"${text}" is no number`);
    return value;
  }

  private pointed(text: string): string {
    return this.decimalComma ? text.replace(',', '.') : text;
  }

  private columnsNote(): string {
    const { columns, head } = this;
    const named = (at: number) => `"${head.header[at]}"`;
    const parts = [
      `date from ${columns.dateAt.map(named).join(', ')}`,
      `rain from ${named(columns.rainAt)}`,
      ...(columns.maxTempAt < 0 ? [] : [`maximum temperature from ${named(columns.maxTempAt)}`]),
      ...(columns.minTempAt < 0 ? [] : [`minimum temperature from ${named(columns.minTempAt)}`]),
      ...(columns.stationAt < 0 ? [] : [`station from ${named(columns.stationAt)}`]),
    ];
    const unused = columns.unusedAt.map(named).join(', ');
    return `Columns guessed by their names: ${parts.join(', ')}${unused && `; not used: ${unused}`}`;
  }

  private wordNotes(fixedId: string | undefined): string[] {
    const { request, head, missing, traces } = this;
    const values = (count: number) => `${count} ${count === 1 ? 'value' : 'values'}`;
    const ownId =
      fixedId === undefined ? 'a column' : head.stationId === null ? null : 'the lines above its header';
    return [
      ...(traces > 0 ? [`${values(traces)} of trace read as no rain`] : []),
      ...(missing > 0 ? [`${values(missing)} marked as missing`] : []),
      ...(request.station !== undefined && ownId !== null && request.station !== fixedId
        ? [`The station id comes from ${ownId}; "${request.station}" is not used`]
        : []),
    ];
  }
}
