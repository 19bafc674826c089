import type { StationCheck } from '../schema/stationCheck.ts';
import type { StationExtent } from '../schema/weather.ts';
import { completenessText } from './completenessText.ts';
import { pairLines, sayRain } from './rainWords.ts';
import { textTable } from './textTable.ts';

type Pair = [string, string];

/** A table of stations, one a line. */
export function stationsText(stations: readonly StationExtent[]): string {
  const rows = stations.map(({ id, name, firstDate, lastDate, rainDays, temperatureDays, invented }) => [
    id,
    name,
    `${firstDate} to ${lastDate}`,
    String(rainDays),
    String(temperatureDays),
    invented ? 'invented' : '',
  ]);
  return textTable([['Station', 'Name', 'Record', 'Rain days', 'Temp. days', ''], ...rows]);
}

/** What a record is worth, in lines. */
export function checkText(report: StationCheck): string {
  const { station } = report;
  const percent = (fraction: number) => `${(fraction * 100).toFixed(1)} %`;
  const year = (one: StationCheck['driestYear']) =>
    one === null ? 'none' : `${one.year}, ${sayRain(one.rainMm)}`;
  const rows: Pair[] = [
    ['Station', `${station.id}, ${station.name}${station.invented ? ' (invented)' : ''}`],
    ['Record', `${report.firstDate} to ${report.lastDate}, ${report.days} days`],
    ['Rain days missing', percent(report.rainMissingFraction)],
    ['Days from totals', `${report.spreadDays} given a share of a total of several days`],
    ['Days filled in', `${report.filledDays} with the mean of their time of year`],
    ['Temperatures missing', percent(report.temperatureMissingFraction)],
    ['Dropped by flag', String(report.reading.droppedByFlag)],
    ['Presumed zero', String(report.reading.presumedZero)],
    ['Standing twice', String(report.reading.duplicated)],
    [
      'Mean yearly rain',
      report.meanAnnualRainMm === null
        ? 'no year is complete enough'
        : `${sayRain(report.meanAnnualRainMm)} over ${report.fullYears} years at least 98 % complete`,
    ],
    ['Driest of them', year(report.driestYear)],
    ['Wettest of them', year(report.wettestYear)],
    [
      'Longest gaps',
      report.longestGaps.map(({ firstDate, days }) => `${firstDate} (${days} d)`).join(', ') || 'none',
    ],
    ['Gaps in all', String(report.gapCount)],
    ...changeLines(report),
  ];
  const notes = report.reading.notes.map((note) => `${note}\n`).join('');
  const problem = report.problem
    ? `\nNo odds from this record: ${report.problem.message} ${report.problem.hint}\n`
    : '';
  return `${pairLines(rows)}\n${notes && `\nHow it was read\n${notes}`}\n${completenessText(report)}${problem}`;
}

/** Hours of reading and positions, a line each; the first of each kind carries its name. */
function changeLines({
  station,
  changes: { observationTime: hours, formerPositions },
}: StationCheck): Pair[] {
  const { periods, exceptions, knownDays, unknownDays } = hours;
  const times = periods.map(
    ({ time, firstDate, lastDate, readings }) =>
      `${time} from ${firstDate} to ${lastDate} (${readings} readings)`,
  );
  const rest = [
    ...(exceptions > 0 ? [`${exceptions} readings at other hours, fewer than 30 in a row`] : []),
    ...(unknownDays > 0 && knownDays > 0 ? [`${unknownDays} readings without a known hour`] : []),
    ...(periods.length > 1 ? ['a change of hour moves rain to the day before or after'] : []),
  ];
  const place = (one: {
    latitudeDeg: number | null;
    longitudeDeg: number | null;
    elevationM: number | null;
  }) => `${one.latitudeDeg ?? '?'}°, ${one.longitudeDeg ?? '?'}°, ${one.elevationM ?? '?'} m`;
  const moves = formerPositions.map((one) => `${place(one)}, until ${one.replacedBy} gave another`);
  return [
    ...named('Rain read at', knownDays === 0 ? ['the records do not say at what hour'] : [...times, ...rest]),
    ...named('Position', moves.length === 0 ? ['the same in every source read'] : [place(station), ...moves]),
  ];
}

const named = (name: string, lines: readonly string[]): Pair[] =>
  lines.map((line, index) => [index === 0 ? name : '', line]);
