import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { dayNumberOf } from '../calendar.ts';
import { SourceFailedError } from '../errors.ts';
import type { Station, StationRecord } from '../schema/weather.ts';
import { damagedFile } from './damagedFile.ts';
import { MAX_TEMP, MIN_TEMP, RAIN } from './element.ts';
import { RecordBuilder } from './recordBuilder.ts';

const FILE_NAME = 'weather.csv';
const SOURCE = 'vega-datasets weather.csv';
const NO_FLAG = 32;

// The file names only the city. Seattle's position is that of its airport's station in the public station list;
// New York's (Central Park) is from memory.
const STATIONS: Record<string, Station> = {
  Seattle: {
    id: 'example-seattle',
    name: 'Seattle, 2012-2015',
    latitudeDeg: 47.45,
    longitudeDeg: -122.31,
    elevationM: 113,
    invented: false,
  },
  'New York': {
    id: 'example-new-york',
    name: 'New York, 2012-2015',
    latitudeDeg: 40.78,
    longitudeDeg: -73.97,
    elevationM: 40,
    invented: false,
  },
};

/**
 * The two real four-year records that the installed `vega-datasets` package carries: `example-seattle` and
 * `example-new-york`. Too short for odds; meant as a first import.
 * @throws {SourceFailedError} FILE_NOT_FOUND where the package is not installed, FILE_DAMAGED
 */
export async function readExampleRecords(): Promise<StationRecord[]> {
  const builder = new RecordBuilder();
  const text = await exampleText();
  builder.openFile(SOURCE, text.length);
  const [header, ...lines] = text.trimEnd().split(/\r?\n/);
  if (!header.startsWith('location,date,precipitation,temp_max,temp_min')) {
    throw damagedFile(FILE_NAME, 1, 1, `the header "${header.slice(0, 60)}" is not the one expected`);
  }
  lines.forEach((line, index) => {
    addLine(builder, line, index + 2);
  });
  const byId = new Map(Object.values(STATIONS).map((station) => [station.id, station]));
  return [...builder.records((id) => byId.get(id) ?? null)];
}

function addLine(builder: RecordBuilder, text: string, line: number): void {
  const [location, date, rainMm, maxTempC, minTempC] = text.split(',');
  const station = STATIONS[location];
  if (station === undefined) throw damagedFile(FILE_NAME, line, 1, `"${location}" is no known place`);
  if (!/^\d{4}-\d\d-\d\d$/.test(date)) throw damagedFile(FILE_NAME, line, 2, `"${date}" is no date`);
  const [year, month, day] = date.split('-').map(Number);
  const columns = builder.station(station.id);
  const values = [
    [RAIN, rainMm],
    [MAX_TEMP, maxTempC],
    [MIN_TEMP, minTempC],
  ] as const;
  for (const [index, [element, value]] of values.entries()) {
    if (!/^-?\d+(\.\d+)?$/.test(value))
      throw damagedFile(FILE_NAME, line, index + 3, `"${value}" is no number`);
    columns.add(dayNumberOf(year, month, day), element, Math.round(Number(value) * 10), NO_FLAG, NO_FLAG);
  }
}

async function exampleText(): Promise<string> {
  try {
    const entry = createRequire(import.meta.url).resolve('vega-datasets');
    return await readFile(join(dirname(entry), '..', 'data', FILE_NAME), 'utf8');
  } catch (cause) {
    throw new SourceFailedError(
      'FILE_NOT_FOUND',
      'The example records of the package vega-datasets are not there.',
      {
        hint: 'Install the project with npm ci.',
        cause,
      },
    );
  }
}
