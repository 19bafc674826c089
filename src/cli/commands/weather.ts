import type { Command as Program } from 'commander';
import { checkStation } from '../../app/checkStation.ts';
import type { Units } from '../../quantities.ts';
import type { CliDeps } from '../command.ts';
import {
  asStationOption,
  dateOrderOption,
  type RecordFlags,
  readerOf,
  unitsInOption,
} from '../recordOptions.ts';
import { checkText, stationsText } from '../weatherText.ts';
import { unitsOption } from '../wordingOptions.ts';
import { defineExport } from './weatherExport.ts';
import { defineFetch } from './weatherFetch.ts';
import { defineCompact, defineImport } from './weatherImport.ts';
import { defineNear } from './weatherNear.ts';
import { defineNormals } from './weatherNormals.ts';

interface JsonFlag {
  json?: boolean;
}

interface CheckFlags extends JsonFlag, RecordFlags {
  units: Units;
}

const JSON_FLAG = ['--json', 'print the result as JSON'] as const;

/** `drywake weather import | fetch | compact | export | list | check | normals | near`. */
export function define(program: Program, deps: CliDeps): void {
  program.addHelpText('after', '\nExample:\n  drywake weather near --county "Gallatin, MT"\n');
  const sub = (name: string, summary: string, example: string) =>
    program
      .command(name)
      .description(summary)
      .copyInheritedSettings(program)
      .option(...JSON_FLAG)
      .addHelpText('after', `\nExample:\n  drywake weather ${example}\n`);

  defineImport(
    sub(
      'import',
      'bring weather files, or folders of them, into the store',
      'import records/USC00241044.dly.gz',
    ),
    deps,
  );
  defineFetch(
    sub(
      'fetch',
      'fetch records from the public service and import them',
      'fetch --state MT --with PRCP,TMAX,TMIN --since 1981',
    ),
    deps,
  );
  defineCompact(
    sub('compact', 'bring each station’s days together in the store, after imports by year', 'compact'),
    deps,
  );
  defineExport(
    sub('export', 'write stored days as Parquet, partitioned by station', 'export --parquet records-parquet'),
    deps,
  );
  sub('list', 'stations that can be asked', 'list').action((flags: JsonFlag) => list(flags, deps));
  sub('check', 'how complete one station’s record is', 'check demo-invented')
    .argument('<station>', 'station id')
    .option('--weather <path...>', 'files or folders to read straight from, without the store')
    .addOption(unitsInOption())
    .addOption(dateOrderOption())
    .addOption(asStationOption())
    .addOption(unitsOption('the printed report'))
    .action((station: string, flags: CheckFlags) => check(station, flags, deps));
  defineNormals(
    sub(
      'normals',
      'rain normals of a window of the calendar, and the season so far against them',
      'normals demo-invented --from 05-01 --to 08-31',
    ),
    deps,
  );
  defineNear(
    sub(
      'near',
      'stations around a point or a US county, and which of them to take',
      'near --county "Gallatin, MT" --elevation 1500',
    ),
    deps,
  );
}

async function list(flags: JsonFlag, deps: CliDeps): Promise<void> {
  const stations = await (await deps.storedReader()).stations();
  deps.terminal.out(flags.json ? `${JSON.stringify({ stations }, null, 2)}\n` : stationsText(stations));
}

async function check(station: string, flags: CheckFlags, deps: CliDeps): Promise<void> {
  const reader = await readerOf(flags, deps);
  const report = checkStation(await reader.record(station));
  deps.terminal.out(flags.json ? `${JSON.stringify(report, null, 2)}\n` : checkText(report, flags.units));
}
