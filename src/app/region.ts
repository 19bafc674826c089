import { InvalidInputError, MissingDataError } from '../errors.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import {
  type RegionEvent,
  type RegionInput,
  type RegionQuestion,
  type RegionRow,
  regionQuestionSchema,
} from '../schema/region.ts';
import { codesLike, US_STATES } from '../schema/usStates.ts';
import type { StationExtent } from '../schema/weather.ts';
import { type Companions, companionsOf, recordsOf } from './companionsOf.ts';
import type { LentRecord } from './lentTemperatures.ts';
import { modelOf } from './modelOf.ts';
import { readQuestion } from './readQuestion.ts';
import { type ResolvedRegion, regionOfStation, resolveRegion } from './regionOfStation.ts';
import { throwIfStopped } from './stopped.ts';
import type { WeatherReader } from './weatherReader.ts';
import type { Workshop } from './workshop.ts';

/** Most stations handed to a worker at once, and the tasks that what is read at once makes at least. */
const STATIONS_PER_TASK = 16;
const TASKS_PER_READ = 4;
/** Stations read at once: few at first, so that rows come soon, then twice as many each time up to the most. */
const FIRST_READ = 8;
const MOST_READ = 256;
/** Reads asked for before the first of them is there: those that wait for each other share one opening of the store. */
const READS_AHEAD = 2;
/** Tasks handed out beyond those that workers are busy with; what is read and waiting stays bounded by it. */
const TASKS_WAITING = 4;

export interface RegionDeps {
  /** Version of the program, which the answers name. */
  readonly version: string;
  readonly catalogue: Catalogue;
  readonly weather: WeatherReader;
  /** Workers; all is worked out here where it is absent. */
  readonly workshop?: Workshop;
  /** State that a place lies in, by its letters; needed where states are asked for. */
  readonly stateOf?: () => Promise<(latitudeDeg: number, longitudeDeg: number) => string | null>;
}

/**
 * One treatment, crop and date over all stations of a reader, or of some states, or of a box: rows as they are worked
 * out, in the order of the station ids, however many workers there are. Records are read some at a time.
 *
 * @throws {InvalidInputError | MissingDataError} as the odds do; NO_CARRYOVER, STATIONS_NONE
 * @throws {ConflictError} STOPPED
 * @example (await regionRows({ residual: 'flumioxazin', crop: 'lentil', appliedOn: '2026-08-14', plantOn: '2027-05-10' }, { version, catalogue, weather }).next()).value?.step // 'start'
 */
export async function* regionRows(
  input: RegionInput,
  deps: RegionDeps,
  signal?: AbortSignal,
): AsyncGenerator<RegionEvent> {
  const question = readQuestion(regionQuestionSchema, input);
  const region = resolveRegion(question, deps.catalogue);
  const { resolved } = region;
  if (resolved.interval.lengthDays === 0 || resolved.active?.soilResidual === 'no') {
    throw new InvalidInputError(
      'NO_CARRYOVER',
      `No carryover is modelled for ${resolved.treatmentName} before ${resolved.cropName}.`,
      {
        hint: 'Choose a residual with a rotation interval before this crop.',
        details: { field: 'residual' },
      },
    );
  }
  const all = await deps.weather.stations();
  const stations = await stationsIn(question, all, deps);
  const of = stations.length;
  yield {
    step: 'start',
    stations: of,
    residual: resolved.treatmentName,
    crop: resolved.cropName,
    question,
    cautions: cautionsOf(region, stations),
    model: modelOf(deps.version),
  };
  let done = 0;
  let answered = 0;
  const source = { weather: deps.weather, companions: companionsOf(all, deps.weather) };
  for await (const rows of rowsOf(stations, region, { ...source, workshop: deps.workshop }, signal)) {
    done += rows.length;
    answered += rows.filter(({ figures }) => figures !== null).length;
    yield { step: 'rows', done, of, rows };
  }
  yield { step: 'end', answered, of };
}

/** Where records come from, and who works them out. */
interface RegionSource extends Pick<RegionDeps, 'weather' | 'workshop'> {
  readonly companions: Companions;
}

/** Rows of groups of stations, in order; groups ahead are read and worked on meanwhile. */
async function* rowsOf(
  stations: readonly StationExtent[],
  region: ResolvedRegion,
  source: RegionSource,
  signal?: AbortSignal,
): AsyncGenerator<RegionRow[]> {
  const { workshop } = source;
  const work = (lent: LentRecord[]): Promise<RegionRow[]> | RegionRow[] =>
    workshop
      ? workshop.run({ kind: 'region', question: region.question, stations: lent }, signal)
      : lent.map((station) => regionOfStation(station, region));
  const most = TASKS_WAITING + (workshop?.workers ?? 0);
  const under: Promise<RegionRow[]>[] = [];
  const add = (lent: LentRecord[]) => {
    const rows = Promise.resolve(work(lent));
    rows.catch(() => undefined);
    under.push(rows);
  };
  const groups = groupsOf(stations);
  const read = (ids: readonly string[]) => {
    const group = readGroup(source, ids);
    group.catch(() => undefined);
    return group;
  };
  const reading = groups.slice(0, READS_AHEAD).map(read);
  for (let group = 0; group < groups.length; group++) {
    while (await isReadyBefore(under[0], reading[0])) yield (await under.shift()) ?? [];
    const records = (await reading.shift()) ?? [];
    if (group + READS_AHEAD < groups.length) reading.push(read(groups[group + READS_AHEAD]));
    const perTask = Math.min(STATIONS_PER_TASK, Math.ceil(records.length / TASKS_PER_READ));
    for (let at = 0; at < records.length; at += perTask) {
      throwIfStopped(signal);
      while (under.length >= most) yield (await under.shift()) ?? [];
      add(records.slice(at, at + perTask));
      if (!workshop) await new Promise<void>((resolve) => setImmediate(resolve));
    }
  }
  while (under.length > 0) yield (await under.shift()) ?? [];
}

/** Whether rows are worked out while the next stations are still being read. */
const isReadyBefore = async (rows: Promise<unknown> | undefined, read: Promise<unknown>): Promise<boolean> =>
  rows !== undefined && Promise.race([rows.then(() => true), read.then(() => false)]);

/** Ids of the stations that are read together. */
function groupsOf(stations: readonly StationExtent[]): string[][] {
  const groups: string[][] = [];
  let from = 0;
  for (let size = FIRST_READ; from < stations.length; size = Math.min(MOST_READ, 2 * size)) {
    groups.push(stations.slice(from, from + size).map(({ id }) => id));
    from += size;
  }
  return groups;
}

const readGroup = async (
  { weather, companions }: RegionSource,
  ids: readonly string[],
): Promise<LentRecord[]> => companions.lend(await recordsOf(weather, ids));

/** Stations of the region, by id. */
async function stationsIn(
  { states, box }: RegionQuestion,
  all: readonly StationExtent[],
  deps: Pick<RegionDeps, 'stateOf'>,
): Promise<StationExtent[]> {
  const stateOf = states && deps.stateOf ? await deps.stateOf() : null;
  const wanted = new Set(states?.map(knownState));
  const inside = all.filter(({ latitudeDeg, longitudeDeg }) => {
    if (latitudeDeg === null || longitudeDeg === null) return !states && !box;
    if (box) {
      const { west, south, east, north } = box;
      const between =
        west <= east
          ? longitudeDeg >= west && longitudeDeg <= east
          : longitudeDeg >= west || longitudeDeg <= east;
      if (!between || latitudeDeg < south || latitudeDeg > north) return false;
    }
    return !stateOf || wanted.has(stateOf(latitudeDeg, longitudeDeg) ?? '');
  });
  if (inside.length === 0) {
    throw new MissingDataError(
      'STATIONS_NONE',
      all.length === 0
        ? 'There is no station to look at.'
        : `None of the ${all.length} stations lies in that region.`,
      {
        hint: `${stateOf ? statesOf(all, stateOf) : ''}Import records of stations there, or widen the region.`,
        details: { stations: all.length },
      },
    );
  }
  return inside.sort((a, b) => (a.id < b.id ? -1 : 1));
}

/**
 * The letters of a state, in capitals.
 * @throws {InvalidInputError} STATE_UNKNOWN, with the states that may have been meant
 */
function knownState(given: string): string {
  const state = given.toUpperCase();
  if (US_STATES.includes(state)) return state;
  const like = codesLike(state, US_STATES);
  throw new InvalidInputError('STATE_UNKNOWN', `"${given}" is no state of the United States.`, {
    hint: like.length > 0 ? `Did you mean ${like.join(' or ')}?` : `They are ${US_STATES.join(', ')}.`,
    details: { field: 'states', given, nearest: like },
  });
}

/** The states that stations lie in, as a sentence; empty where none is known. */
function statesOf(
  stations: readonly StationExtent[],
  stateOf: (latitudeDeg: number, longitudeDeg: number) => string | null,
): string {
  const states = stations.flatMap(({ latitudeDeg, longitudeDeg }) =>
    latitudeDeg === null || longitudeDeg === null ? [] : (stateOf(latitudeDeg, longitudeDeg) ?? []),
  );
  return states.length === 0
    ? ''
    : `Stations that are here lie in ${[...new Set(states)].sort().join(', ')}. `;
}

function cautionsOf({ resolved }: ResolvedRegion, stations: readonly StationExtent[]): string[] {
  return [
    ...(stations.some(({ invented }) => invented)
      ? ['Stations marked as invented are an example: their weather never fell anywhere.']
      : []),
    `The interval of ${resolved.interval.text} is ${resolved.interval.origin === 'own label' ? 'your own entry' : 'a published or remembered figure, for planning only'}; the label is the law and the floor.`,
    'A station speaks for its own gauge: nothing is drawn between stations, and a station with too few years says so. One without temperatures borrows them from a companion, which its row names, or says that there is none.',
    'Conditions of the label, such as rain asked for within the interval, are looked at field by field, not here.',
  ];
}
