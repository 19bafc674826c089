import type { Command as Program } from 'commander';
import { stationNormals } from '../../app/stationNormals.ts';
import type { Units } from '../../quantities.ts';
import type { CliDeps } from '../command.ts';
import { normalsText } from '../normalsText.ts';
import { yearsOption } from '../optionValues.ts';
import {
  asStationOption,
  dateOrderOption,
  type RecordFlags,
  readerOf,
  unitsInOption,
} from '../recordOptions.ts';
import { unitsOption } from '../wordingOptions.ts';

interface NormalsFlags extends RecordFlags {
  from: string;
  to: string;
  base?: { baseFrom: number; baseTo: number };
  asOf?: string;
  json?: boolean;
  units: Units;
}

/** `drywake weather normals`: rain normals of any window of the calendar. */
export function defineNormals(command: Program, deps: CliDeps): void {
  command
    .argument('<station>', 'station id')
    .requiredOption('--from <mm-dd>', 'first day of the window')
    .requiredOption(
      '--to <mm-dd>',
      'last day of the window; in the next year where it comes before the first',
    )
    .option(
      '--base <years>',
      'base period, such as 1991-2020 (default: the latest standard 30 years)',
      yearsOption,
    )
    .option('--as-of <date>', 'last day that counts as observed (default: the last of the record)')
    .option('--weather <path...>', 'files or folders to read straight from, without the store')
    .addOption(unitsInOption())
    .addOption(dateOrderOption())
    .addOption(asStationOption())
    .addOption(unitsOption('the printed report'))
    .action(async (station: string, flags: NormalsFlags) => {
      const { from, to, base, asOf, json, units } = flags;
      const reader = await readerOf(flags, deps);
      const normals = stationNormals(await reader.record(station), {
        from,
        to,
        asOf,
        base: base && { from: base.baseFrom, to: base.baseTo },
      });
      deps.terminal.out(json ? `${JSON.stringify(normals, null, 2)}\n` : normalsText(normals, units));
    });
}
