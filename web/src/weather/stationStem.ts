import type { StationCheck } from '../api/contract.ts';

/** Beginning of a file's name: the station, and that it is invented where it is. */
export const stationStem = ({ station }: StationCheck): string =>
  ['drywake', station.invented && !station.id.includes('invented') ? 'invented' : null, station.id]
    .filter((part) => part !== null)
    .join('-')
    .replaceAll(/[^\w.-]+/g, '-');
