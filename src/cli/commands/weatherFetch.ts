import { InvalidArgumentError, type Command as Program } from 'commander';
import { type FetchRequest, fetchWeather } from '../../app/fetchWeather.ts';
import { count } from '../../app/words.ts';
import { ConflictError, InvalidInputError } from '../../errors.ts';
import type { FetchedRecord, FetchSummary } from '../../schema/fetchSummary.ts';
import { type StationWish, stationWishSchema } from '../../schema/stationWish.ts';
import type { CliDeps } from '../command.ts';
import { fetchProgressText } from '../fetchProgress.ts';
import { fileLine } from '../importProgress.ts';
import { numberOption, wholeNumberOption, wholeNumberWithin } from '../optionValues.ts';

interface FetchFlags {
  state?: string;
  box?: NonNullable<StationWish['box']>;
  with?: string[];
  since?: number;
  until?: number;
  year?: number[];
  most?: number;
  dryRun?: boolean;
  records?: string;
  largest?: number;
  json?: boolean;
}

const MOST_STATIONS = 500;
/** Elements that odds need. */
const ELEMENTS = ['PRCP', 'TMAX', 'TMIN'];
/** Shortest time between two progress lines. [ms] */
const REDRAW_MS = 200;

/** `drywake weather fetch`: records of the public service, by id, state, box or year. */
export function defineFetch(command: Program, deps: CliDeps): void {
  command
    .argument('[id...]', 'station ids')
    .option('--state <code>', 'all stations of a state or province, such as MT', (text) => text.toUpperCase())
    .option('--box <S,W,N,E>', 'all stations between these latitudes and longitudes', boxOption)
    .option(
      '--with <elements>',
      `elements that stations of a state or box must hold (default: ${ELEMENTS})`,
      (text) => text.toUpperCase().split(','),
    )
    .option('--since <year>', 'their years must reach back to this one', wholeNumberWithin(1700, 2200))
    .option(
      '--until <year>',
      'and up to this one (default: they still report)',
      wholeNumberWithin(1700, 2200),
    )
    .option('--year <year>', 'a whole year of every station, large; may be repeated', yearOption)
    .option('--most <n>', `most stations of a state or box (default: ${MOST_STATIONS})`, wholeNumberOption)
    .option('--dry-run', 'only list what would be fetched')
    .option(
      '--records <address>',
      'address of the service (default: DRYWAKE_RECORDS, else the public archive)',
    )
    .option('--largest <MB>', 'largest file that is taken, as it is sent (default: 200)', numberOption)
    .action((ids: string[], flags: FetchFlags) => bring(requestOf(ids, flags), flags, deps));
}

function requestOf(ids: string[], flags: FetchFlags): FetchRequest {
  return {
    ids,
    years: flags.year ?? [],
    wish: wishOf(flags),
    mostStations: flags.most ?? MOST_STATIONS,
    selectOnly: flags.dryRun === true,
  };
}

function wishOf(flags: FetchFlags): StationWish | null {
  const { state, box, since, until } = flags;
  if (state === undefined && box === undefined) {
    const lone = (['with', 'since', 'until'] as const).find((name) => flags[name] !== undefined);
    if (lone === undefined) return null;
    throw new InvalidInputError(
      'PLACE_MISSING',
      `--${lone} chooses among the stations of a place; none is given.`,
      {
        hint: 'Give --state MT or --box 45,-112,46,-110 with it.',
      },
    );
  }
  const wish = stationWishSchema.safeParse({ state, box, elements: flags.with ?? ELEMENTS, since, until });
  if (wish.success) return wish.data;
  const [{ path, message }] = wish.error.issues;
  const flag = path[0] === 'elements' ? 'with' : String(path[0]);
  throw new InvalidInputError('WISH_INVALID', `--${flag} cannot be used so: ${message}.`, {
    hint: 'Example: --state MT --with PRCP,TMAX,TMIN --since 1981.',
  });
}

async function bring(request: FetchRequest, flags: FetchFlags, deps: CliDeps): Promise<void> {
  const { terminal } = deps;
  const service = await deps.recordsService({
    ...(flags.records !== undefined && { address: flags.records }),
    ...(flags.largest !== undefined && { mostBytes: Math.round(flags.largest * 1e6) }),
  });
  const line = progressLine(deps);
  const summary = await deps.untilInterrupted((signal) =>
    fetchWeather(
      request,
      { ...deps, service },
      {
        signal,
        onWanted: (wanted) => {
          line.begin(wanted.length);
          if (!request.selectOnly)
            line.say(`${count(wanted.length, 'file')} to fetch from ${service.address}`);
        },
        onBytes: (bytes) => line.add(bytes),
        onFile: (file, done) => {
          line.state.done = done;
          line.say(`[${done}/${line.state.total}] ${recordLine(file)}`);
        },
      },
    ).finally(line.clear),
  );
  if (flags.json) terminal.out(`${JSON.stringify(summary, null, 2)}\n`);
  else if (request.selectOnly) terminal.out(`${summary.wanted.join('\n')}\n`);
  else terminal.out(`${summaryLine(summary)}\n`);
  if (request.years.length > 0 && summary.imported > 0) {
    terminal.err(
      'Years lie across stations in the store; `drywake weather compact` makes reading quicker.\n',
    );
  }
  if (!request.selectOnly) refuseIncomplete(summary);
}

/** A line that is drawn over and over where a person watches. */
function progressLine({ terminal, now }: CliDeps) {
  let begun = now();
  const state = { done: 0, total: 0, bytes: 0 };
  let drawnAt = Number.NEGATIVE_INFINITY;
  const clear = () => {
    if (terminal.interactive && drawnAt > 0) terminal.err('\r\x1b[K');
  };
  return {
    state,
    clear,
    /** The files' own time and bytes count from here on; the lists are here. */
    begin(total: number) {
      begun = now();
      Object.assign(state, { total, bytes: 0 });
    },
    add(bytes: number) {
      state.bytes += bytes;
      if (!terminal.interactive || now() - drawnAt < REDRAW_MS) return;
      drawnAt = now();
      terminal.err(`\r\x1b[K${fetchProgressText({ ...state, elapsedMs: drawnAt - begun })}`);
    },
    say(text: string) {
      clear();
      terminal.err(`${text}\n`);
    },
  };
}

function recordLine({ title, outcome, problem, imported }: FetchedRecord): string {
  if (problem !== null) return `${problem.message} ${problem.hint}`;
  const how = outcome === 'unchanged' ? 'unchanged at the service' : 'fetched';
  if (imported?.outcome === 'unchanged') return `${title}: ${how}, and in the store already`;
  return imported === null ? `${title}: ${how}` : `${fileLine(imported)} (${how})`;
}

const summaryLine = ({ wanted, fetched, unchanged, imported }: FetchSummary): string =>
  `${imported} of ${wanted.length} in the store; ${fetched} fetched, ${unchanged} unchanged since the last time.`;

function refuseIncomplete({ failed, stopped, wanted, files }: FetchSummary): void {
  if (stopped) {
    throw new ConflictError(
      'FETCH_STOPPED',
      `Stopped after ${files.length} of ${wanted.length}; what is finished is in the store.`,
      { hint: 'The same command goes on from there.' },
    );
  }
  const missed = wanted.length - files.length;
  if (failed + missed === 0) return;
  throw new InvalidInputError(
    'FETCH_INCOMPLETE',
    `${failed + missed} of ${wanted.length} did not come into the store${missed > 0 ? `, ${missed} of them not asked for any more` : ''}.`,
    { hint: 'The lines above say why; the same command goes on from there.' },
  );
}

function boxOption(text: string): FetchFlags['box'] {
  const parts = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (parts.length !== 4 || parts.some((part) => !Number.isFinite(part))) {
    throw new InvalidArgumentError('Write south, west, north and east in degrees: 45,-112,46,-110.');
  }
  const [southDeg, westDeg, northDeg, eastDeg] = parts;
  if (parts.some((degrees, index) => Math.abs(degrees) > (index % 2 === 0 ? 90 : 180))) {
    throw new InvalidArgumentError('Latitudes go from -90 to 90 degrees, longitudes from -180 to 180.');
  }
  return { southDeg, westDeg, northDeg, eastDeg };
}

function yearOption(text: string, earlier: number[] = []): number[] {
  if (!/^(17|18|19|20|21)\d\d$/.test(text)) throw new InvalidArgumentError('Write a year such as 2024.');
  return [...earlier, Number(text)];
}
