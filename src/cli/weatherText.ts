import type { Units } from '../quantities.ts';
import type { StationCheck } from '../schema/stationCheck.ts';
import type { StationExtent } from '../schema/weather.ts';
import { completenessText } from './completenessText.ts';
import { moveText } from './moveText.ts';
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
export function checkText(report: StationCheck, units: Units): string {
  const { station } = report;
  const percent = (fraction: number) => `${(fraction * 100).toFixed(1)} %`;
  const rows: Pair[] = [
    [
      'Station',
      `${station.id}${station.name === station.id ? '' : `, ${station.name}`}${station.invented ? ' (invented)' : ''}`,
    ],
    ['Record', `${report.firstDate} to ${report.lastDate}, ${report.days} days`],
    ['Rain days missing', percent(report.rainMissingFraction)],
    ['Days from totals', `${report.spreadDays} given a share of a total of several days`],
    ['Days filled in', `${report.filledDays} with the mean of their time of year`],
    ['Temperatures missing', percent(report.temperatureMissingFraction)],
    [
      'Dropped',
      `${report.reading.droppedByFlag} values with a quality flag, ${report.reading.implausible} impossible ones`,
    ],
    ['Presumed zero', `${report.reading.presumedZero} rain values missing in the original`],
    ['Standing twice', `${report.reading.duplicated} values, of which the last counts`],
    [
      'Mean yearly rain',
      report.meanAnnualRainMm === null
        ? 'no year is complete enough'
        : `${sayRain(report.meanAnnualRainMm, units)} over ${report.fullYears} years at least 98 % complete`,
    ],
    ...yearLines(report, units),
    [
      'Longest gaps',
      report.longestGaps.map(({ firstDate, days }) => `${firstDate} (${days} d)`).join(', ') || 'none',
    ],
    ['Gaps in all', String(report.gapCount)],
    ...changeLines(report, units),
  ];
  const notes = report.reading.notes.map((note) => `${note}\n`).join('');
  const problem = report.problem
    ? `\nNo odds from this record: ${report.problem.message} ${report.problem.hint}\n`
    : '';
  return `${pairLines(rows)}\n${notes && `\nHow it was read\n${notes}`}\n${completenessText(report, units)}${problem}`;
}

/** The driest and wettest complete year; nothing where none is complete. */
const yearLines = ({ driestYear, wettestYear }: StationCheck, units: Units): Pair[] =>
  driestYear === null || wettestYear === null
    ? []
    : [
        ['Driest of them', `${driestYear.year}, ${sayRain(driestYear.rainMm, units)}`],
        ['Wettest of them', `${wettestYear.year}, ${sayRain(wettestYear.rainMm, units)}`],
      ];

/** Hours of reading and moves, a line each; the first of each kind carries its name. */
function changeLines(
  { changes: { observationTime: hours, formerPositions } }: StationCheck,
  units: Units,
): Pair[] {
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
  return [
    ...named('Rain read at', knownDays === 0 ? ['the records do not say at what hour'] : [...times, ...rest]),
    ...named(
      'Moved',
      formerPositions.length === 0
        ? ['the same place in every source read']
        : formerPositions.map((move) => moveText(move, units)),
    ),
  ];
}

const named = (name: string, lines: readonly string[]): Pair[] =>
  lines.map((line, index) => [index === 0 ? name : '', line]);
