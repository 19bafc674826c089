import { sayIn } from '../app/say.ts';
import type { Units } from '../quantities.ts';
import type { NearestStations } from '../schema/place.ts';
import { wayWords } from './moveText.ts';
import { textTable } from './textTable.ts';

/** Stations around a place, one a line, and the one suggested with its reason. */
export function nearText(
  { place, stations, suggested, reason, withoutPosition }: NearestStations,
  units: Units,
): string {
  const heights = stations.some(({ elevationDifferenceM }) => elevationDifferenceM !== null);
  const rows = stations.map((station) => [
    station.id === suggested ? '*' : '',
    station.id,
    station.name,
    wayWords(station.distanceKm, units),
    ...(heights ? [signedHeight(station.elevationDifferenceM, units)] : []),
    `${station.firstDate.slice(0, 4)}-${station.lastDate.slice(0, 4)}`,
    `${station.rainPercent.toFixed(1)} %`,
    station.elements.includes('temperatures') ? `${station.temperaturePercent.toFixed(1)} %` : 'none',
    station.cost.totalKm.toFixed(0),
  ]);
  const head = [
    '',
    'Station',
    'Name',
    'Distance',
    ...(heights ? ['Height'] : []),
    'Years',
    'Rain',
    'Temp.',
    'Cost',
  ];
  const at = `${place.latitudeDeg.toFixed(3)}, ${place.longitudeDeg.toFixed(3)}`;
  const left =
    withoutPosition > 0
      ? `${withoutPosition} more left out: their position is not known (import the station list).\n`
      : '';
  return `Around ${place.name === null ? at : `the middle of ${place.name} (${at})`}\n\n${
    stations.length > 0 ? `${textTable([head, ...rows])}\n` : ''
  }${reason}\n${left}`;
}

const signedHeight = (metres: number | null, units: Units): string =>
  metres === null ? '?' : `${metres < 0 ? '−' : '+'}${sayIn({ units }).height(Math.abs(metres))}`;
