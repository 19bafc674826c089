import { csvFields } from './csvLine.ts';
import { CsvTable } from './csvTable.ts';
import { yearFirstDay } from './dateText.ts';
import { elementAt, RAIN } from './element.ts';
import { numberOf } from './numberText.ts';
import type { Place, RecordBuilder } from './recordBuilder.ts';
import type { RecordLayout } from './recordLayout.ts';
import { timeOfDayIn } from './timeOfDay.ts';

const MISSING = -9999;
const BLANK = 32;

/** Where a by-year table with station fields joined to it holds what is read, from 0; -1 where it does not. */
function columnsOf(header: readonly string[]) {
  const names = header.map((name) => name.toUpperCase().replaceAll(/[ _-]/g, ''));
  const find = (...wanted: string[]) => names.findIndex((name) => wanted.includes(name));
  const columns = {
    id: find('ID', 'STATION'),
    date: find('YEAR/MONTH/DAY', 'DATE', 'YYYYMMDD'),
    element: find('ELEMENT'),
    value: find('DATAVALUE', 'VALUE'),
    measurementFlag: find('MFLAG'),
    qualityFlag: find('QFLAG'),
    time: find('OBSTIME'),
    latitude: find('LATITUDE'),
    longitude: find('LONGITUDE'),
    elevation: find('ELEVATION'),
    state: find('STATE'),
    name: find('NAME'),
  };
  const { id, date, element, value, measurementFlag, qualityFlag } = columns;
  return Math.min(id, date, element, value, measurementFlag, qualityFlag) < 0 ? null : columns;
}

const PLACE = ['latitude', 'longitude', 'elevation', 'state', 'name'] as const;

/** By-year CSV whose lines also carry the station's name and position, told by its header; values are tenths. */
export const joinedCsv: RecordLayout = {
  name: 'by-year CSV joined with station fields',

  recognises: ([firstLine]) => columnsOf(csvFields(firstLine, ',') ?? []) !== null,

  read(bytes, fileName, builder, { onlyStation }): void {
    const table = new CsvTable(bytes, fileName);
    const columns = columnsOf(table.header);
    if (columns === null) return;
    let before = '';
    for (const { line, fields } of table.rows()) {
      const id = fields[columns.id];
      if (onlyStation !== undefined && id !== onlyStation) continue;
      const damaged = (at: number, what: string) => table.damaged(line, at + 1, `"${fields[at]}" ${what}`);
      if (!/^[\w-]+$/.test(id)) throw damaged(columns.id, 'is no station id of letters and digits');
      const placeText = [id, ...PLACE.map((column) => fields[columns[column]])].join();
      if (placeText !== before) describe(builder, id, fields, columns);
      before = placeText;
      const dayNumber = yearFirstDay(fields[columns.date]);
      if (Number.isNaN(dayNumber)) throw damaged(columns.date, 'is no date written YYYYMMDD');
      const element = Buffer.from(fields[columns.element], 'latin1');
      if (element.length !== 4) throw damaged(columns.element, 'is no element name of 4 letters');
      if (fields[columns.value] === '') continue;
      const value = numberOf(fields[columns.value]);
      if (!Number.isInteger(value)) throw damaged(columns.value, 'is no whole number');
      if (value === MISSING) continue;
      const flag = (at: number) => {
        if (fields[at].length > 1) throw damaged(at, 'is no flag of one character');
        return fields[at].charCodeAt(0) || BLANK;
      };
      const flags = [flag(columns.measurementFlag), flag(columns.qualityFlag)] as const;
      const station = builder.station(id);
      const code = elementAt(element, 0);
      station.add(dayNumber, code, value, ...flags);
      const time = columns.time < 0 || code !== RAIN ? Number.NaN : timeOfDayIn(fields[columns.time].trim());
      if (!Number.isNaN(time)) station.addRainTime(dayNumber, time);
    }
  },
};

/** Name and position of a station; a name that slipped into the column of the state is found there. */
function describe(
  builder: RecordBuilder,
  id: string,
  fields: readonly string[],
  columns: NonNullable<ReturnType<typeof columnsOf>>,
): void {
  const field = (at: number) => (at < 0 ? '' : fields[at]);
  const place: Place = {};
  const state = field(columns.state);
  if (field(columns.name) !== '') place.name = field(columns.name);
  else if (state.length > 2) {
    place.name = state;
    builder.note(id, `The station's name "${state}" stands in the column of the state`);
  }
  const latitudeDeg = numberOf(field(columns.latitude));
  const longitudeDeg = numberOf(field(columns.longitude));
  const elevationM = numberOf(field(columns.elevation));
  if (Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180)
    Object.assign(place, { latitudeDeg, longitudeDeg });
  if (Math.abs(elevationM) <= 9000 && elevationM !== -999.9) place.elevationM = elevationM;
  builder.place(id, place);
}
