import type { StationExtent, StationRecord } from '../schema/weather.ts';

/** Where daily records come from; the store, plain files and the embedded demo each implement it. */
export interface WeatherReader {
  /** All stations that can be read, by id. */
  stations(): Promise<readonly StationExtent[]>;
  /**
   * The whole raw record of one station. It belongs to the caller, who may hand its columns on to a worker, which takes
   * them away; a reader that keeps a record gives copies.
   * @throws {MissingDataError} STATION_UNKNOWN where there is none of that id
   */
  record(stationId: string): Promise<StationRecord>;
  /** Several stations' records at once, in the order asked for; absent where one by one is as good. */
  records?(stationIds: readonly string[]): Promise<StationRecord[]>;
}
