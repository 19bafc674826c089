import { METRES_PER_FOOT } from '../units.ts';
import { csvFields } from './csvLine.ts';
import { type GaugeHeader, gaugeColumns } from './gaugeColumns.ts';
import type { Place } from './recordBuilder.ts';

/** What stands above the first day of a gauge file. */
export interface GaugeHead {
  readonly found: GaugeHeader;
  readonly header: readonly string[];
  readonly separator: string;
  /** Line of the header, from 1. */
  readonly headerLine: number;
  /** What the lines above the header say of the station. */
  readonly stationId: string | null;
  readonly place: Place;
}

const SEPARATORS = [',', ';', '\t'];
const MOST_LINES_ABOVE = 30;

/** Looks for the header among the first lines; null where there is none. */
export function gaugeHead(firstLines: readonly string[]): GaugeHead | null {
  for (const [index, line] of firstLines.slice(0, MOST_LINES_ABOVE).entries()) {
    for (const separator of SEPARATORS) {
      const header = csvFields(line, separator);
      const found = header && header.length > 1 ? gaugeColumns(header) : null;
      if (header === null || found === null) continue;
      return {
        found,
        header,
        separator,
        headerLine: index + 1,
        ...aboveHeader(firstLines.slice(0, index), separator),
      };
    }
  }
  return null;
}

/** Reads "key,value" and "key: value" pairs; what is not understood is left alone. */
function aboveHeader(lines: readonly string[], separator: string): Pick<GaugeHead, 'stationId' | 'place'> {
  const place: Place = {};
  let stationId: string | null = null;
  for (const line of lines) {
    const fields = (csvFields(line.replace(/^#+/, ''), separator) ?? []).flatMap((field) =>
      field.split(/:\s+/),
    );
    for (let at = 0; at + 1 < fields.length; at += 2) {
      const [key, value] = [fields[at].trim().toLowerCase(), fields[at + 1].trim()];
      if (/^(station|site)?[ _]?name$/.test(key)) place.name = value;
      else if (/^((station|site)[ _]?)?id$|^station$/.test(key)) stationId = value;
      else if (/^lat(itude)?$/.test(key)) Object.assign(place, within('latitudeDeg', value, 90));
      else if (/^lon(g|gitude)?$/.test(key)) Object.assign(place, within('longitudeDeg', value, 180));
      else if (/^elev(ation)?$/.test(key)) Object.assign(place, elevation(value));
    }
  }
  return { stationId, place };
}

function within(name: keyof Place, text: string, most: number): Place {
  const value = Number.parseFloat(text);
  return Math.abs(value) <= most ? { [name]: value } : {};
}

/** Metres, or feet where the value says so. */
function elevation(text: string): Place {
  const feet = /\d\s*(ft|feet)\b/i.test(text);
  return within('elevationM', String(Number.parseFloat(text) * (feet ? METRES_PER_FOOT : 1)), 9000);
}
