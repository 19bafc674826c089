import type { Command as Program } from 'commander';
import { nearestStations } from '../../app/nearestStations.ts';
import { sayIn } from '../../app/say.ts';
import { type GivenPlace, soughtPlace } from '../../app/soughtPlace.ts';
import type { Units } from '../../quantities.ts';
import type { CliDeps } from '../command.ts';
import { nearText } from '../nearText.ts';
import { numberWithin, wholeNumberWithin } from '../optionValues.ts';
import {
  asStationOption,
  dateOrderOption,
  type RecordFlags,
  readerOf,
  unitsInOption,
} from '../recordOptions.ts';
import { unitsOption } from '../wordingOptions.ts';

interface NearFlags extends GivenPlace, RecordFlags {
  most?: number;
  json?: boolean;
  units: Units;
}

/** `drywake weather near`: stations around a point or in the middle of a county. */
export function defineNear(command: Program, deps: CliDeps): void {
  command
    .option('--lat <degrees>', 'latitude', numberWithin(-90, 90, ' degrees'))
    .option('--lon <degrees>', 'longitude, west negative', numberWithin(-180, 180, ' degrees'))
    .option('--county <name>', 'US county with its state, such as "Gallatin, MT"')
    .option('--elevation <m>', 'height of the field above sea level', numberWithin(-500, 9000, ' m'))
    .option('--most <n>', 'stations to list (default: 10)', wholeNumberWithin(1, 100))
    .option('--weather <path...>', 'files or folders to read straight from, without the store')
    .addOption(unitsInOption())
    .addOption(dateOrderOption())
    .addOption(asStationOption())
    .addOption(unitsOption('the printed list'))
    .action(async (flags: NearFlags) => {
      const place = await soughtPlace(
        flags,
        deps.counties,
        'Give --lat 45.7 --lon -111, or --county "Gallatin, MT".',
      );
      const { most, json, units } = flags;
      const reader = await readerOf(flags, deps);
      const near = nearestStations(await reader.stations(), place, most, sayIn({ units }));
      deps.terminal.out(json ? `${JSON.stringify(near, null, 2)}\n` : nearText(near, units));
    });
}
