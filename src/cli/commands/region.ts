import { InvalidArgumentError, type Command as Program } from 'commander';
import { csvOf } from '../../app/flatTable.ts';
import { regionRows } from '../../app/region.ts';
import { regionCollection, regionTable } from '../../app/regionTable.ts';
import type { RegionEvent, RegionInput, RegionRow } from '../../schema/region.ts';
import type { CliDeps } from '../command.ts';
import { modelLine } from '../modelLine.ts';
import { workersOption } from '../optionValues.ts';
import { checkOutput, writeOutput } from '../outputFile.ts';
import { createProgressLine } from '../progressLine.ts';
import { addSeasonOptions, fieldsOf, readerOf, type SeasonFlags } from '../seasonOptions.ts';
import { soilsByStation } from '../soilsByStation.ts';
import { withWorkshop } from '../withWorkshop.ts';

interface RegionFlags extends SeasonFlags {
  state?: string[];
  box?: RegionInput['box'];
  soils?: string;
  out?: string;
  workers?: number;
  geojson?: boolean;
  json?: boolean;
}

/** `drywake region`: one treatment over many stations. */
export function define(program: Program, deps: CliDeps): void {
  addSeasonOptions(program, [
    'station',
    'latitudeDeg',
    'elevationM',
    'temperatureStation',
    'fillFromNeighbours',
  ]);
  program
    .option('--state <letters>', 'stations of these US states only, such as MT,ND', statesOption)
    .option('--box <w,s,e,n>', 'stations between these limits only, in degrees', boxOption)
    .option('--soils <file>', 'CSV with the columns station and soil_class; other stations take --soil')
    .option('--out <file>', 'write to a file: .csv, .json, .geojson or .parquet (default: CSV to the output)')
    .option('--workers <n>', 'worker threads; 0 for none (default: by the number of stations)', workersOption)
    .option('--geojson', 'print GeoJSON')
    .option('--json', 'print JSON, metric and unrounded')
    .addHelpText(
      'after',
      `
Each station answers for itself; nothing is drawn between them. Stations that cannot answer say why.

Example:
  drywake region --residual flumioxazin --crop lentil --applied 2026-08-14 --plant 2027-05-10 --as-of 2026-09-30
`,
    )
    .action((flags: RegionFlags) => run(flags, deps));
}

async function run(flags: RegionFlags, deps: CliDeps): Promise<void> {
  const { terminal } = deps;
  if (flags.out !== undefined) checkOutput(flags.out, ['json', 'geojson']);
  const { box, state: states, soils } = flags;
  const question = {
    ...(await fieldsOf(flags, deps)),
    ...(box && { box }),
    ...(states && { states }),
    ...(soils !== undefined && { soilByStation: soilsByStation(await deps.readText(soils), soils) }),
  } as RegionInput;
  const weather = await readerOf(flags, deps);
  const { length } = await weather.stations();
  const line = createProgressLine(terminal, 'stations');
  const rows: RegionRow[] = [];
  let begun: Extract<RegionEvent, { step: 'start' }> | undefined;
  await deps.untilInterrupted((signal) =>
    withWorkshop(deps, length, flags.workers, async (workshop) => {
      const { version, stateOf } = deps;
      const regionDeps = { version, catalogue: deps.catalogue(), weather, workshop, stateOf };
      for await (const event of regionRows(question, regionDeps, signal)) {
        if (event.step === 'start') begun = event;
        if (event.step !== 'rows') continue;
        rows.push(...event.rows);
        line.show(event.done, event.of);
      }
    }),
  );
  line.end();
  if (begun === undefined) return;
  const start = begun;
  const rules = deps
    .catalogue()
    .countingWindows.filter(
      ({ country, thresholdMm }) => country === start.question.country && thresholdMm !== null,
    )
    .map(({ id }) => id);
  const whole = () => ({ ...start, step: undefined, rows });
  const geojson = () => regionCollection(start, rows);
  const columns = regionTable(rules, start);
  if (flags.out !== undefined) {
    await writeOutput(flags.out, { columns, rows, others: { json: whole, geojson } }, deps);
  } else if (flags.geojson || flags.json) {
    terminal.out(`${JSON.stringify(flags.geojson ? geojson() : whole(), null, 2)}\n`);
  } else {
    terminal.out(csvOf(columns, rows));
  }
  const answered = rows.filter(({ figures }) => figures !== null).length;
  terminal.err(`${answered} of ${rows.length} stations can answer; the others say why in the last column.\n`);
  terminal.err(`${modelLine(start.model)}\n`);
  for (const caution of start.cautions) terminal.err(`${caution}\n`);
}

function statesOption(text: string): string[] {
  const states = text.split(',').map((one) => one.trim().toUpperCase());
  if (states.every((one) => /^[A-Z]{2}$/.test(one))) return states;
  throw new InvalidArgumentError('Write the two letters of each state, for example MT,ND.');
}

function boxOption(text: string): RegionInput['box'] {
  const limits = text.split(',').map(Number);
  const [west, south, east, north] = limits;
  if (limits.length !== 4 || limits.some((one) => !Number.isFinite(one)) || south > north) {
    throw new InvalidArgumentError('Write west, south, east and north in degrees: -116,44,-96,49.');
  }
  return { west, south, east, north };
}
