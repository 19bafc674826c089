import type { Command as Program } from 'commander';
import { type ImportInput, type ImportTarget, importWeather } from '../../app/importWeather.ts';
import { ConflictError, InvalidInputError } from '../../errors.ts';
import type { ImportSummary } from '../../schema/importSummary.ts';
import type { CliDeps } from '../command.ts';
import { fileLine, importProgressText } from '../importProgress.ts';
import {
  asStationOption,
  dateOrderOption,
  type RecordFlags,
  readOptionsOf,
  unitsInOption,
} from '../recordOptions.ts';

interface ImportFlags extends RecordFlags {
  example?: boolean;
  again?: boolean;
  json?: boolean;
}

/** Shortest time between two drawings of the progress line. [ms] */
const REDRAW_MS = 200;
const CLEAR_LINE = '\r\x1b[K';

/** `drywake weather import`. */
export function defineImport(command: Program, deps: CliDeps): void {
  command
    .argument(
      '[path...]',
      'files or folders: .dly and .csv of any layout named in the README, plain or .gz, with a station list beside them',
    )
    .addOption(unitsInOption())
    .addOption(dateOrderOption())
    .addOption(asStationOption())
    .option('--again', 'read files again that are in the store and have not changed since')
    .option('--example', 'the real four-year records of Seattle and New York that come with the program')
    .action((paths: string[], flags: ImportFlags) => bringIn(paths, flags, deps));
}

/** `drywake weather compact`. */
export function defineCompact(command: Program, deps: CliDeps): void {
  command.action(async ({ json }: { json?: boolean }) => {
    const store = await deps.importStore();
    try {
      const done = await deps.untilInterrupted((signal) => store.compact({ signal }));
      deps.terminal.out(
        json
          ? `${JSON.stringify(done, null, 2)}\n`
          : `${done.rows} station days lie by station and date now; ${done.scatteredFiles} files had been added beside them.\n`,
      );
    } finally {
      await store.close();
    }
  });
}

async function bringIn(paths: string[], flags: ImportFlags, deps: CliDeps): Promise<void> {
  const { terminal } = deps;
  if (paths.length === 0 && !flags.example) {
    throw new InvalidInputError('NOTHING_TO_IMPORT', 'Nothing was named to import.', {
      hint: 'Name files or folders, or give --example.',
    });
  }
  const options = readOptionsOf(flags);
  const inputs = [
    ...(paths.length > 0 ? [await deps.weatherFiles(paths, options)] : []),
    ...(flags.example ? [await deps.exampleRecords()] : []),
  ];
  // What the user says about files may differ from the last time, though the files do not.
  const toldMore = Object.values(options).some((value) => value !== undefined);
  const store = await deps.importStore(inputs.flatMap(pathsOf));
  try {
    const summaries = await importAll(inputs, store, !flags.again && !toldMore, deps);
    const files = summaries.flatMap((summary) => summary.files);
    const sum = (count: 'imported' | 'unchanged' | 'failed' | 'passedOver') =>
      summaries.reduce((total, summary) => total + summary[count], 0);
    const [imported, unchanged, failed] = [sum('imported'), sum('unchanged'), sum('failed')];
    const stopped = summaries.some((summary) => summary.stopped);
    const scattered = imported > 0 ? await store.scatteredFiles() : 0;
    if (flags.json) {
      const whole = { imported, unchanged, failed, passedOver: sum('passedOver'), stopped, files };
      terminal.out(`${JSON.stringify(whole, null, 2)}\n`);
    } else {
      const also = unchanged > 0 ? `, ${unchanged} unchanged since they were` : '';
      terminal.out(`${imported} of ${files.length} imported${also}.\n`);
    }
    if (scattered > 0) {
      terminal.err(
        `Days of one station lie apart in the store, ${scattered === 1 ? 'one file' : `${scattered} files`} having been added beside others; \`drywake weather compact\` brings them together, and reading is quicker then.\n`,
      );
    }
    refuseIncomplete(stopped, failed, files.length, imported + unchanged);
  } finally {
    await store.close();
  }
}

const pathsOf = (input: ImportInput): string[] =>
  'files' in input ? input.files.map(({ path }) => path) : [];

async function importAll(
  inputs: readonly ImportInput[],
  store: ImportTarget,
  passOverUnchanged: boolean,
  { terminal, now, untilInterrupted }: CliDeps,
): Promise<ImportSummary[]> {
  return untilInterrupted(async (signal) => {
    const begun = now();
    let drawnAt = Number.NEGATIVE_INFINITY;
    let fileBegun = begun;
    const summaries: ImportSummary[] = [];
    for (const input of inputs) {
      const summary = await importWeather(input, store, {
        signal,
        passOverUnchanged,
        onPart: (part) => {
          if (!terminal.interactive || now() - drawnAt < REDRAW_MS) return;
          drawnAt = now();
          const times = { elapsedMs: drawnAt - begun, fileMs: drawnAt - fileBegun };
          terminal.err(`${CLEAR_LINE}${importProgressText({ ...part, ...times })}`);
        },
        onProgress: ({ file, done, total }) => {
          fileBegun = now();
          terminal.err(`${terminal.interactive ? CLEAR_LINE : ''}[${done}/${total}] ${fileLine(file)}\n`);
        },
      });
      summaries.push(summary);
      if (summary.stopped) break;
    }
    if (terminal.interactive) terminal.err(CLEAR_LINE);
    return summaries;
  });
}

function refuseIncomplete(stopped: boolean, failed: number, all: number, inStore: number): void {
  if (stopped) {
    throw new ConflictError(
      'IMPORT_STOPPED',
      `Stopped: ${inStore} ${inStore === 1 ? 'file is' : 'files are'} in the store whole, and nothing of the one in hand.`,
      { hint: 'The same command goes on from there.' },
    );
  }
  if (failed > 0) {
    throw new InvalidInputError(
      'IMPORT_INCOMPLETE',
      `${failed} of ${all} could not be imported; the others are in the store.`,
      { hint: 'The lines above name each file and what is wrong with it.' },
    );
  }
}
