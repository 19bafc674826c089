import type { Reading } from '../question/parseDate.ts';
import type { SoughtPlace } from './weatherAddress.ts';

const NUMBER = String.raw`([+-]?\d{1,3}(?:\.\d+)?)\s*°?\s*`;
const POINT = new RegExp(`^${NUMBER}([NS])?\\s*[,; ]\\s*${NUMBER}([EW])?$`, 'i');

/**
 * Reads a place: "45.68, -111.05", "45.68 N 111.05 W", or the name of a county with its state. Numbers alone are
 * latitude and longitude, in that order.
 */
export function parsePlace(text: string): Reading<SoughtPlace> {
  const given = text.trim();
  if (given === '') return { problem: 'Write a county, or latitude and longitude.' };
  const found = POINT.exec(given);
  if (found === null) {
    return /\d\s*[,; ]\s*[+-]?\d/.test(given)
      ? { problem: 'Write latitude and longitude in degrees, such as 45.68, -111.05.' }
      : { value: { kind: 'county', county: given } };
  }
  const [, latitude, north, longitude, east] = found;
  const latitudeDeg = Number(latitude) * (north?.toUpperCase() === 'S' ? -1 : 1);
  const longitudeDeg = Number(longitude) * (east?.toUpperCase() === 'W' ? -1 : 1);
  if (Math.abs(latitudeDeg) > 90)
    return { problem: `Latitude ${latitude} lies beyond the poles: −90 to 90.` };
  if (Math.abs(longitudeDeg) > 180)
    return { problem: `Longitude ${longitude} is out of range: −180 to 180.` };
  return { value: { kind: 'point', latitudeDeg, longitudeDeg } };
}
