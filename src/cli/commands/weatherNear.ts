import type { Command as Program } from 'commander';
import { nearestStations } from '../../app/nearestStations.ts';
import { type GivenPlace, soughtPlace } from '../../app/soughtPlace.ts';
import type { CliDeps } from '../command.ts';
import { nearText } from '../nearText.ts';
import { numberOption, wholeNumberOption } from '../optionValues.ts';
import {
  asStationOption,
  dateOrderOption,
  type RecordFlags,
  readerOf,
  unitsInOption,
} from '../recordOptions.ts';

interface NearFlags extends GivenPlace, RecordFlags {
  most?: number;
  json?: boolean;
}

/** `drywake weather near`: stations around a point or in the middle of a county. */
export function defineNear(command: Program, deps: CliDeps): void {
  command
    .option('--lat <degrees>', 'latitude', numberOption)
    .option('--lon <degrees>', 'longitude, west negative', numberOption)
    .option('--county <name>', 'US county with its state, such as "Gallatin, MT"')
    .option('--elevation <m>', 'height of the field above sea level', numberOption)
    .option('--most <n>', 'stations to list (default: 10)', wholeNumberOption)
    .option('--weather <path...>', 'files or folders to read straight from, without the store')
    .addOption(unitsInOption())
    .addOption(dateOrderOption())
    .addOption(asStationOption())
    .action(async (flags: NearFlags) => {
      const place = await soughtPlace(
        flags,
        deps.counties,
        'Give --lat 45.7 --lon -111, or --county "Gallatin, MT".',
      );
      const { most, json } = flags;
      const reader = await readerOf(flags, deps);
      const near = nearestStations(
        await reader.stations(),
        place,
        most === undefined ? undefined : Math.max(1, most),
      );
      deps.terminal.out(json ? `${JSON.stringify(near, null, 2)}\n` : nearText(near));
    });
}
