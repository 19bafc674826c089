import { SourceFailedError } from '../errors.ts';
import type { FormerPlace, Station, StationRecord } from '../schema/weather.ts';
import { StationColumns } from './stationColumns.ts';

/** What the station list knows of an id; null where it is not listed. */
export type DescribeStation = (id: string) => Station | null;

/** A station's name and place as a record file gives them. */
export type Place = Partial<Pick<Station, 'name' | 'latitudeDeg' | 'longitudeDeg' | 'elevationM'>>;

/** A station of which nothing is known but its id. */
export const unlistedStation = (id: string): Station => ({
  id,
  name: id,
  latitudeDeg: null,
  longitudeDeg: null,
  elevationM: null,
  invented: false,
});

/** Steps within which two positions are one: half the last digit that station lists give. [°, °, m] */
const SAME_PLACE = { latitudeDeg: 0.00005, longitudeDeg: 0.00005, elevationM: 0.05 };

/** Whether a file gives a known number otherwise; what either does not say differs from nothing. */
const moves = (known: Place, given: Place): boolean =>
  (['latitudeDeg', 'longitudeDeg', 'elevationM'] as const).some((key) => {
    const [before, now] = [known[key] ?? null, given[key] ?? null];
    return before !== null && now !== null && Math.abs(before - now) > SAME_PLACE[key];
  });

/** Cells of columns that are always to be had, and that each byte read adds: a dense file needs one for four bytes. */
const SPARE_CELLS = 8_000_000;
const CELLS_PER_BYTE = 0.25;

/** Collects values of any number of stations from one or more files and makes records of them. */
export class RecordBuilder {
  private readonly stations = new Map<string, StationColumns>();
  private readonly places = new Map<string, Place>();
  private readonly formerPlaces = new Map<string, FormerPlace[]>();
  private fileName = '';
  private freeCells = SPARE_CELLS;

  /**
   * Says which file the following values come from; it is named in the record's source.
   * @param bytes its size, by which memory may grow [B]
   */
  openFile(fileName: string, bytes: number): void {
    this.fileName = fileName;
    this.freeCells += bytes * CELLS_PER_BYTE;
  }

  /** Lends cells of columns: few values, far apart, must not take memory without bound. */
  private readonly lend = (cells: number): void => {
    this.freeCells -= cells;
    if (this.freeCells >= 0) return;
    throw new SourceFailedError(
      'FILE_TOO_LARGE',
      `${this.fileName} spreads few values over more stations and days than can be held at once.`,
      { hint: 'Cut the file by station and read the parts.', details: { file: this.fileName } },
    );
  };

  /** The columns of a station, to which its values are added. */
  station(id: string): StationColumns {
    let columns = this.stations.get(id);
    if (columns === undefined) {
      columns = new StationColumns(this.lend);
      this.stations.set(id, columns);
    }
    columns.sources.add(this.fileName);
    return columns;
  }

  /**
   * Keeps what a file says of a station's place, which counts where no station list knows the station, and what an
   * earlier row or file said otherwise.
   */
  place(id: string, place: Place): void {
    const known = this.places.get(id);
    if (known !== undefined && moves(known, place)) {
      const { latitudeDeg = null, longitudeDeg = null, elevationM = null } = known;
      const former = this.formerPlaces.get(id) ?? [];
      former.push({ latitudeDeg, longitudeDeg, elevationM, replacedBy: this.fileName });
      this.formerPlaces.set(id, former);
    }
    this.places.set(id, { ...known, ...place });
  }

  /** Says of a station's values in the open file what was guessed, recognised or declared. */
  note(id: string, sentence: string): void {
    this.station(id).note(`${this.fileName}: ${sentence}.`);
  }

  /** Every id seen, those without any accepted value included. */
  ids(): string[] {
    return [...this.stations.keys()];
  }

  /** The records, in the order in which their stations were first met; stations without any accepted value have none. */
  *records(describe: DescribeStation = () => null): Generator<StationRecord> {
    for (const [id, columns] of this.stations) {
      const record = columns.finish(describe(id) ?? { ...unlistedStation(id), ...this.places.get(id) });
      const formerPlaces = this.formerPlaces.get(id);
      if (record !== null) yield formerPlaces === undefined ? record : { ...record, formerPlaces };
    }
  }
}
