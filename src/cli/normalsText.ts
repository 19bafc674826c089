import type { Units } from '../quantities.ts';
import type { StationNormals } from '../schema/stationNormals.ts';
import { pairLines, sayRain } from './rainWords.ts';

const BASE_WORDS = {
  given: 'as asked for',
  standard: 'the latest standard 30 years',
  all: 'all usable years: too few of the standard 30 are usable',
} as const;

/** Normals of a window and the season so far, in lines. */
export function normalsText(normals: StationNormals, units: Units): string {
  const { station, base, from, to, season } = normals;
  const rows: [string, string][] = [
    ['Station', `${station.id}, ${station.name}${station.invented ? ' (invented)' : ''}`],
    ['Window', `${from} to ${to}`],
    ['Base period', `${base.from}-${base.to}, ${BASE_WORDS[base.kind]}; ${base.usableYears} years usable`],
    ['Mean', sayRain(normals.meanMm, units)],
    ['Median', sayRain(normals.medianMm, units)],
    ['Dry third', `under ${sayRain(normals.lowerTercileMm, units)}`],
    ['Wet third', `over ${sayRain(normals.upperTercileMm, units)}`],
  ];
  if (!base.stands) {
    rows.push(['Not a WMO normal', 'fewer than 80 % of the base years are usable; taken as it is']);
  }
  rows.push(...seasonRows(season, units));
  return `${pairLines(rows)}\n`;
}

function seasonRows(season: StationNormals['season'], units: Units): [string, string][] {
  if (season === null) return [['Season', 'the record does not hold it']];
  const percent = season.percentOfNormal === null ? '' : `, ${season.percentOfNormal.toFixed(0)} % of normal`;
  const missing =
    season.missingDays === 0 ? '' : `; ${season.missingDays} days missing and left out everywhere`;
  return [
    [
      season.complete ? 'Last season' : 'Season so far',
      `${season.firstDate} to ${season.lastDate}: ${sayRain(season.rainMm, units)} of ${sayRain(season.normalMm, units)}${percent}${missing}`,
    ],
    [
      'Rank',
      `${season.rank} of ${season.outOf}, 1 the driest; in the ${season.third} third${
        season.usable ? '' : '; too many days missing to lean on it'
      }`,
    ],
  ];
}
