import type { StationCheck } from '../schema/stationCheck.ts';
import type { StationExtent } from '../schema/weather.ts';
import { inchesFromMm } from '../units.ts';

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
  return table([['Station', 'Name', 'Record', 'Rain days', 'Temp. days', ''], ...rows]);
}

/** What a record is worth, in lines. */
export function checkText(report: StationCheck): string {
  const { station } = report;
  const percent = (fraction: number) => `${(fraction * 100).toFixed(1)} %`;
  const rain = (mm: number) => `${inchesFromMm(mm).toFixed(1)} in (${mm.toFixed(0)} mm)`;
  const year = (one: StationCheck['driestYear']) =>
    one === null ? 'none' : `${one.year}, ${rain(one.rainMm)}`;
  const rows: [string, string][] = [
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
        : `${rain(report.meanAnnualRainMm)} over ${report.fullYears} years at least 98 % complete`,
    ],
    ['Driest of them', year(report.driestYear)],
    ['Wettest of them', year(report.wettestYear)],
    [
      'Longest gaps',
      report.longestGaps.map(({ firstDate, days }) => `${firstDate} (${days} d)`).join(', ') || 'none',
    ],
  ];
  const problem = report.problem
    ? `\nNo odds from this record: ${report.problem.message} ${report.problem.hint}\n`
    : '';
  return `${rows.map(([name, value]) => `${name.padEnd(22)}${value}`).join('\n')}\n${problem}`;
}

function table(rows: readonly (readonly string[])[]): string {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  return `${rows
    .map((row) =>
      row
        .map((cell, column) => cell.padEnd(widths[column]))
        .join('  ')
        .trimEnd(),
    )
    .join('\n')}\n`;
}
