import { MissingDataError } from '../../errors.ts';
import type { StationWish } from '../../schema/stationWish.ts';
import { codesLike } from '../../schema/usStates.ts';
import { integerIn } from '../integerIn.ts';
import { type InventoryEntry, inventoryEntries } from '../inventory.ts';
import { nextLineAt } from '../lineBytes.ts';
import { type StationPlace, stationPlaces } from './stationPlaces.ts';

/** The lists that stations are chosen from, as the service sends them. */
export interface ServiceLists {
  readonly stations: Buffer;
  readonly inventory: Buffer;
}

/** A station reports still if its record reaches the inventory's newest year or the one before. [years] */
const STILL_REPORTS = 1;
/** Where a line of the inventory holds the last year, and where it ends. */
const LAST_YEAR_AT = 41;
const LINE_LENGTH = 45;

/**
 * Ids of the stations of a state, a box or both that hold every element asked for over the years asked for, by id.
 * Without a last year they must still report, where a first year is asked for.
 * @throws {MissingDataError} STATE_UNKNOWN, SELECTION_EMPTY
 * @throws {SourceFailedError} FILE_DAMAGED, naming file, line and column
 */
export function selectStations({ stations, inventory }: ServiceLists, wish: StationWish): string[] {
  const elements = new Set(wish.elements);
  const until = wish.until ?? (wish.since === undefined ? 0 : newestYear(inventory) - STILL_REPORTS);
  const since = wish.since ?? Number.POSITIVE_INFINITY;
  const reaches = (entry: InventoryEntry) => entry.firstYear <= since && entry.lastYear >= until;
  const held = new Map<string, Set<string>>();
  const wanted = { stations: stationsAt(stations, wish), elements };
  for (const entry of inventoryEntries(inventory, 'ghcnd-inventory.txt', wanted)) {
    if (!reaches(entry)) continue;
    const ofStation = held.get(entry.stationId) ?? new Set<string>();
    held.set(entry.stationId, ofStation.add(entry.element));
  }
  const ids = [...held].filter(([, { size }]) => size === elements.size).map(([id]) => id);
  if (ids.length > 0) return ids.sort();
  throw new MissingDataError(
    'SELECTION_EMPTY',
    `No station ${[...placeWords(wish), `holds ${wish.elements.join(', ')}`, ...yearWords(wish)].join(' ')}.`,
    { hint: 'Ask for fewer elements (--with PRCP), other years or another place.', details: { ...wish } },
  );
}

/** Stations of the state and in the box; refuses a state that the list does not know. */
function stationsAt(list: Buffer, { state, box }: StationWish): Set<string> {
  const ids = new Set<string>();
  const states = new Set<string>();
  for (const place of stationPlaces(list)) {
    if (place.state !== '') states.add(place.state);
    if ((state === undefined || place.state === state) && isInBox(place, box)) ids.add(place.id);
  }
  if (state === undefined || states.has(state)) return ids;
  const known = [...states].sort();
  const like = codesLike(state, known);
  throw new MissingDataError('STATE_UNKNOWN', `The station list holds no state or province "${state}".`, {
    hint: `${like.length > 0 ? `Did you mean ${like.join(' or ')}? ` : ''}Its codes are ${known.join(', ')}.`,
    details: { state, known },
  });
}

/** A box whose west lies east of its east goes over the date line. */
function isInBox({ latitudeDeg, longitudeDeg }: StationPlace, box: StationWish['box']): boolean {
  if (box === undefined) return true;
  const { southDeg, westDeg, northDeg, eastDeg } = box;
  if (!(latitudeDeg >= southDeg && latitudeDeg <= northDeg)) return false;
  return westDeg <= eastDeg
    ? longitudeDeg >= westDeg && longitudeDeg <= eastDeg
    : longitudeDeg >= westDeg || longitudeDeg <= eastDeg;
}

/** The last year that any line of the inventory names. */
function newestYear(inventory: Buffer): number {
  let newest = 0;
  for (let at = 0, next = 0; at < inventory.length; at = next) {
    next = nextLineAt(inventory, at);
    if (next - at < LINE_LENGTH) continue;
    const year = integerIn(inventory, at + LAST_YEAR_AT, at + LINE_LENGTH);
    if (year > newest) newest = year;
  }
  return newest;
}

const placeWords = ({ state, box }: StationWish): string[] => [
  ...(state === undefined ? [] : [`in ${state}`]),
  ...(box === undefined ? [] : [`in the box ${Object.values(box).join(',')}`]),
];

const yearWords = ({ since, until }: StationWish): string[] => [
  ...(since === undefined ? [] : [`since ${since}`]),
  ...(until === undefined ? [] : [`up to ${until}`]),
];
