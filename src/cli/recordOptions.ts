import { InvalidArgumentError, Option } from 'commander';
import type { WeatherReader } from '../app/weatherReader.ts';
import { type ReadOptions, readOptionsSchema } from '../schema/readOptions.ts';
import { choiceOption } from './choiceOption.ts';
import type { CliDeps } from './command.ts';

/** What the three options below give, and the files that they are about. */
export interface RecordFlags {
  unitsIn?: ReadOptions['units'];
  dates?: ReadOptions['dates'];
  asStation?: string;
  weather?: string[];
}

/** Units of files that do not say them. */
export const unitsInOption = (): Option =>
  choiceOption(
    '--units-in <system>',
    'units in files that do not say them: us = in and °F, metric = mm and °C, tenths = tenths of both (default: told from the values, or asked)',
    ['us', 'metric', 'tenths'],
  );

/** Order of day and month in files where no date proves it. */
export const dateOrderOption = (): Option =>
  choiceOption(
    '--dates <order>',
    'how dates such as 3/4/2020 are written (default: as a date that can be read one way only proves, or asked)',
    ['day-first', 'month-first'],
  );

/** Station of files that name none. */
export const asStationOption = (): Option =>
  new Option('--as-station <id>', 'station id for gauge files that hold none').argParser((text) => {
    const read = readOptionsSchema.shape.station.safeParse(text);
    if (read.success) return read.data;
    throw new InvalidArgumentError('A station id holds letters, digits, "-" and "_" only.');
  });

/** The options as readers of record files take them. */
export const readOptionsOf = ({ unitsIn, dates, asStation }: RecordFlags): ReadOptions => ({
  units: unitsIn,
  dates,
  station: asStation,
});

/** The files that were named, else the store. */
export const readerOf = async (flags: RecordFlags, deps: CliDeps): Promise<WeatherReader> =>
  flags.weather === undefined ? deps.storedReader() : deps.fileReader(flags.weather, readOptionsOf(flags));
