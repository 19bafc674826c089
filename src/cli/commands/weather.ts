import type { Command as Program } from 'commander';
import { checkStation } from '../../app/checkStation.ts';
import { importWeather } from '../../app/importWeather.ts';
import { InvalidInputError } from '../../errors.ts';
import type { ImportedFile } from '../../schema/importSummary.ts';
import type { CliDeps } from '../command.ts';
import { checkText, stationsText } from '../weatherText.ts';

interface JsonFlag {
  json?: boolean;
}

const JSON_FLAG = ['--json', 'print the result as JSON'] as const;

/** `drywake weather import | list | check`. */
export function define(program: Program, deps: CliDeps): void {
  const sub = (name: string, summary: string, example: string) =>
    program
      .command(name)
      .description(summary)
      .copyInheritedSettings(program)
      .option(...JSON_FLAG)
      .addHelpText('after', `\nExample:\n  drywake weather ${example}\n`);

  sub(
    'import',
    'bring weather files, or folders of them, into the store',
    'import records/USC00241044.dly.gz',
  )
    .argument(
      '[path...]',
      'files or folders: .dly and by-station .csv, plain or .gz, with a station list beside them',
    )
    .option('--example', 'the real four-year records of Seattle and New York that come with the program')
    .action((paths: string[], flags: JsonFlag & { example?: boolean }) => bringIn(paths, flags, deps));
  sub('list', 'stations that can be asked', 'list').action((flags: JsonFlag) => list(flags, deps));
  sub('check', 'how complete one station’s record is', 'check demo-invented')
    .argument('<station>', 'station id')
    .option('--weather <path...>', 'files or folders to read straight from, without the store')
    .action((station: string, flags: JsonFlag & { weather?: string[] }) => check(station, flags, deps));
}

async function bringIn(
  paths: string[],
  flags: JsonFlag & { example?: boolean },
  deps: CliDeps,
): Promise<void> {
  const { terminal } = deps;
  if (paths.length === 0 && !flags.example) {
    throw new InvalidInputError('NOTHING_TO_IMPORT', 'Nothing was named to import.', {
      hint: 'Name files or folders, or give --example.',
    });
  }
  const inputs = [
    ...(paths.length > 0 ? [await deps.weatherFiles(paths)] : []),
    ...(flags.example ? [await deps.exampleRecords()] : []),
  ];
  const store = await deps.importStore();
  try {
    const summaries = [];
    for (const input of inputs) {
      summaries.push(
        await importWeather(input, store, ({ file, done, total }) =>
          terminal.err(`[${done}/${total}] ${fileLine(file)}\n`),
        ),
      );
    }
    const files = summaries.flatMap((summary) => summary.files);
    const failed = files.filter(({ outcome }) => outcome === 'failed');
    const imported = files.filter(({ outcome }) => outcome === 'imported');
    if (flags.json)
      terminal.out(
        `${JSON.stringify({ imported: imported.length, failed: failed.length, files }, null, 2)}\n`,
      );
    else terminal.out(`${imported.length} of ${files.length} imported.\n`);
    if (failed.length > 0) {
      throw new InvalidInputError(
        'IMPORT_INCOMPLETE',
        `${failed.length} of ${files.length} could not be imported; the others are in the store.`,
        {
          hint: 'The lines above name each file and what is wrong with it.',
        },
      );
    }
  } finally {
    await store.close();
  }
}

function fileLine({ source, outcome, stations, problem }: ImportedFile): string {
  if (problem)
    return `${source}: ${outcome === 'passed-over' ? 'passed over. ' : ''}${problem.message} ${problem.hint}`;
  const [first] = stations;
  const inserted = stations.reduce((sum, station) => sum + station.inserted, 0);
  const replaced = stations.reduce((sum, station) => sum + station.replaced, 0);
  const dropped = stations.reduce((sum, station) => sum + station.dropped, 0);
  const who =
    stations.length === 1
      ? `${first.stationId}, ${first.firstDate} to ${first.lastDate}`
      : `${stations.length} stations`;
  return `${source}: ${who}; ${inserted} values new, ${replaced} replaced, ${dropped} dropped by flag or as impossible`;
}

async function list(flags: JsonFlag, deps: CliDeps): Promise<void> {
  const stations = await (await deps.storedReader()).stations();
  deps.terminal.out(flags.json ? `${JSON.stringify({ stations }, null, 2)}\n` : stationsText(stations));
}

async function check(
  station: string,
  flags: JsonFlag & { weather?: string[] },
  deps: CliDeps,
): Promise<void> {
  const reader = flags.weather === undefined ? await deps.storedReader() : deps.fileReader(flags.weather);
  const report = checkStation(await reader.record(station));
  deps.terminal.out(flags.json ? `${JSON.stringify(report, null, 2)}\n` : checkText(report));
}
