import { ELEMENTS } from './element.ts';

/** A column that holds the values of an element in use; columns count from 0. */
export interface WideColumn {
  readonly at: number;
  /** Column of the record: RAIN, MAX_TEMP and so on. */
  readonly element: number;
  /** One column with all flags, "M,Q,S", or two with measurement and quality flag; null where there are none. */
  readonly flagsAt: readonly [number] | readonly [number, number] | null;
  /** A column with the hour of reading alone; -1 where there is none. */
  readonly timeAt: number;
}

/** Where a table with a line for each station and day holds what is read; -1 where it does not. */
export interface WideColumns {
  readonly stationAt: number;
  readonly dateAt: number;
  readonly nameAt: number;
  readonly latitudeAt: number;
  readonly longitudeAt: number;
  readonly elevationAt: number;
  readonly values: readonly WideColumn[];
  /** Columns of elements that are not used. */
  readonly ignoredAt: readonly number[];
}

const NO_ELEMENTS = new Set(['YEAR', 'DATE', 'NAME']);

/** Finds the columns by their names, in any case and order; null where station, date or every element is missing. */
export function wideColumns(header: readonly string[]): WideColumns | null {
  const names = header.map((name) => name.toUpperCase().replaceAll(' ', '_'));
  const find = (...wanted: string[]) => names.findIndex((name) => wanted.includes(name));
  const values: WideColumn[] = [];
  const ignoredAt: number[] = [];
  for (const [at, name] of names.entries()) {
    const element = (ELEMENTS as readonly string[]).indexOf(name);
    if (element >= 0) values.push({ at, element, ...flagsOf(names, at) });
    else if (/^[A-Z]{2}[A-Z0-9]{2}$/.test(name) && !NO_ELEMENTS.has(name)) ignoredAt.push(at);
  }
  const [stationAt, dateAt] = [find('STATION'), find('DATE')];
  if (stationAt < 0 || dateAt < 0 || values.length === 0) return null;
  return {
    stationAt,
    dateAt,
    nameAt: find('NAME', 'STATION_NAME'),
    latitudeAt: find('LATITUDE'),
    longitudeAt: find('LONGITUDE'),
    elevationAt: find('ELEVATION'),
    values,
    ignoredAt,
  };
}

/** Flags and hour stand in a column of the element's own, or in separate ones right behind it. */
function flagsOf(names: readonly string[], at: number): Pick<WideColumn, 'flagsAt' | 'timeAt'> {
  const joined = names.indexOf(`${names[at]}_ATTRIBUTES`);
  if (joined >= 0) return { flagsAt: [joined], timeAt: -1 };
  const apart = names[at + 1] === 'MEASUREMENT_FLAG' && names[at + 2] === 'QUALITY_FLAG';
  const time = apart && names[at + 3] === 'SOURCE_FLAG' && names[at + 4] === 'TIME_OF_OBSERVATION';
  return { flagsAt: apart ? [at + 1, at + 2] : null, timeAt: time ? at + 4 : -1 };
}
