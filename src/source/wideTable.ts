import { InvalidInputError } from '../errors.ts';
import type { UnitSystem } from '../schema/readOptions.ts';
import type { CsvRow, CsvTable } from './csvTable.ts';
import { yearFirstDay } from './dateText.ts';
import { MAX_TEMP, MIN_TEMP, MULTI_DAY_COUNT, MULTI_DAY_RAIN, RAIN } from './element.ts';
import { againstNature, inferUnits } from './inferUnits.ts';
import { multiDayUnit } from './multiDayUnit.ts';
import { numberOf } from './numberText.ts';
import type { RecordBuilder } from './recordBuilder.ts';
import type { ReadRequest } from './recordLayout.ts';
import type { StationColumns } from './stationColumns.ts';
import { timeOfDayIn } from './timeOfDay.ts';
import { UnitEvidence } from './unitEvidence.ts';
import { rainTenths, tempTenths, UNIT_WORDS, unitChoices } from './unitSystem.ts';
import type { WideColumn, WideColumns } from './wideColumns.ts';

const MISSING = -9999;
const BLANK = 32;

/** Reads a table with a line for each station and day and a column for each element; see wideColumns. */
export function readWideTable(
  table: CsvTable,
  columns: WideColumns,
  fileName: string,
  builder: RecordBuilder,
  request: ReadRequest,
): void {
  const { evidence, stationSeen } = lookThrough(table, columns, request.onlyStation);
  if (!stationSeen) return;
  const units = unitsOf(evidence, fileName, request.units);
  const multiDay = multiDayUnit(evidence, units.system);
  const reader = new WideReader(table, columns, builder, units.system, multiDay.inTenths);
  for (const row of table.rows()) {
    const id = stationIn(row, columns);
    if (request.onlyStation !== undefined && id !== request.onlyStation) continue;
    const met = reader.read(row, id);
    if (!met) continue;
    if (units.note !== null) builder.note(id, units.note);
    if (multiDay.note !== null) builder.note(id, multiDay.note);
  }
}

const stationIn = ({ fields }: CsvRow, columns: WideColumns): string =>
  fields[columns.stationAt].replace(/^GHCND:/i, '');

/** Collects what tells the units; values that failed a quality check tell nothing. */
function lookThrough(table: CsvTable, columns: WideColumns, onlyStation?: string) {
  const evidence = new UnitEvidence();
  let stationSeen = onlyStation === undefined;
  for (const row of table.rows()) {
    stationSeen ||= stationIn(row, columns) === onlyStation;
    for (const column of columns.values) {
      const text = row.fields[column.at];
      const value = numberOf(text);
      if (Number.isNaN(value) || value === MISSING || flagsIn(row, column).quality !== BLANK) continue;
      if (column.element === RAIN) evidence.rain.add(text, value, row.line);
      else if (column.element === MULTI_DAY_RAIN) evidence.multiDay.push({ text, value });
      else if (column.element !== MULTI_DAY_COUNT) evidence.temperature.add(text, value, row.line);
    }
  }
  return { evidence, stationSeen };
}

function unitsOf(
  evidence: UnitEvidence,
  fileName: string,
  declared: UnitSystem | undefined,
): { system: UnitSystem; note: string | null } {
  if (declared !== undefined) {
    const doubt = againstNature(declared, evidence);
    const but = doubt === null ? '' : `, although ${doubt}`;
    return { system: declared, note: `Values taken as ${UNIT_WORDS[declared]}, as declared${but}` };
  }
  if (evidence.rain.count + evidence.temperature.count === 0) return { system: 'metric', note: null };
  const { open, grounds } = inferUnits(evidence);
  const because = Object.values(grounds).join('; ');
  if (open.length === 1) {
    return { system: open[0], note: `Values taken as ${UNIT_WORDS[open[0]]}: ${because}` };
  }
  throw new InvalidInputError(
    'UNITS_AMBIGUOUS',
    `${fileName} does not say its units, and its values ${open.length === 0 ? 'fit none that are known' : `fit ${open.map((system) => UNIT_WORDS[system]).join(' as well as ')}`}${because && `: ${because}`}.`,
    {
      hint: `Say which they are: ${unitChoices(open.length === 0 ? undefined : open)}.`,
      details: { file: fileName, choices: open },
    },
  );
}

/** Reads row after row; keeps the station of the row before. */
class WideReader {
  private id = '';
  private station: StationColumns | null = null;

  constructor(
    private readonly table: CsvTable,
    private readonly columns: WideColumns,
    private readonly builder: RecordBuilder,
    private readonly units: UnitSystem,
    private readonly multiDayInTenths: boolean,
  ) {}

  /** Adds a row's values; true where its station is not that of the row before. */
  read(row: CsvRow, id: string): boolean {
    const { columns, table } = this;
    const changed = this.station === null || id !== this.id;
    const station = this.station === null || changed ? this.enter(row, id) : this.station;
    const date = row.fields[columns.dateAt];
    const dayNumber = yearFirstDay(date);
    if (Number.isNaN(dayNumber)) {
      throw table.damaged(
        row.line,
        columns.dateAt + 1,
        `"${date}" is no date written YYYY-MM-DD or YYYYMMDD`,
      );
    }
    for (const column of columns.values) this.addValue(row, column, station, dayNumber);
    let ignored = 0;
    for (const at of columns.ignoredAt) {
      const text = row.fields[at];
      if (text !== '' && Number(text) !== MISSING) ignored++;
    }
    station.ignore(ignored);
    return changed;
  }

  private enter(row: CsvRow, id: string): StationColumns {
    const { columns, table, builder } = this;
    if (!/^[\w-]+$/.test(id)) {
      throw table.damaged(row.line, columns.stationAt + 1, `"${id}" is no station id of letters and digits`);
    }
    const station = builder.station(id);
    this.id = id;
    this.station = station;
    const number = (at: number) => (at < 0 ? Number.NaN : numberOf(row.fields[at]));
    const name = columns.nameAt < 0 ? '' : row.fields[columns.nameAt];
    const [latitudeDeg, longitudeDeg] = [number(columns.latitudeAt), number(columns.longitudeAt)];
    const elevationM = number(columns.elevationAt);
    builder.place(id, {
      ...(name === '' ? {} : { name }),
      ...(Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180 ? { latitudeDeg, longitudeDeg } : {}),
      ...(Math.abs(elevationM) <= 9000 && elevationM !== -999.9 ? { elevationM } : {}),
    });
    return station;
  }

  private addValue(row: CsvRow, column: WideColumn, station: StationColumns, dayNumber: number): void {
    const text = row.fields[column.at];
    if (text === '') return;
    const value = numberOf(text);
    if (Number.isNaN(value)) throw this.table.damaged(row.line, column.at + 1, `"${text}" is no number`);
    if (value === MISSING) return;
    const { measurement, quality } = flagsIn(row, column);
    station.add(dayNumber, column.element, this.inTenths(value, column.element), measurement, quality);
    if (column.element !== RAIN) return;
    const time = timeIn(row, column);
    if (!Number.isNaN(time)) station.addRainTime(dayNumber, time);
  }

  private inTenths(value: number, element: number): number {
    switch (element) {
      case MAX_TEMP:
      case MIN_TEMP:
        return tempTenths(value, this.units);
      case MULTI_DAY_COUNT:
        return Math.round(value);
      case MULTI_DAY_RAIN:
        return rainTenths(value, this.multiDayInTenths ? 'tenths' : this.units);
      default:
        return rainTenths(value, this.units);
    }
  }
}

/** Time at which a value was read, the fourth part of its attributes; NaN where they do not say it. [HHMM] */
function timeIn({ fields }: CsvRow, { flagsAt }: WideColumn): number {
  if (flagsAt === null || flagsAt.length !== 1) return Number.NaN;
  return timeOfDayIn(fields[flagsAt[0]].split(',')[3]?.trim() ?? '');
}

/** Measurement and quality flag of a value, as character codes; blank where none. */
function flagsIn({ fields }: CsvRow, { flagsAt }: WideColumn): { measurement: number; quality: number } {
  const code = (text: string | undefined) => text?.trim().charCodeAt(0) || BLANK;
  if (flagsAt === null) return { measurement: BLANK, quality: BLANK };
  if (flagsAt.length === 2)
    return { measurement: code(fields[flagsAt[0]]), quality: code(fields[flagsAt[1]]) };
  const [measurement, quality] = fields[flagsAt[0]].split(',');
  return { measurement: code(measurement), quality: code(quality) };
}
