import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { dayNumberOf, daysInMonth } from '../../src/calendar.ts';

export const YEAR_STATIONS = ['TST00000001', 'TST00000002', 'TST00000003', 'TST00000004'];

/** Writes one file a year, each with rain and temperatures of every day of January to June of some stations. */
export function writeYears(
  folder: string,
  years: readonly number[],
  stations: readonly string[] = YEAR_STATIONS,
): string[] {
  return years.map((year) => {
    const lines: string[] = [];
    for (let month = 1; month <= 6; month++) {
      for (let day = 1; day <= daysInMonth(year, month); day++) {
        const date = `${year}${String(month).padStart(2, '0')}${String(day).padStart(2, '0')}`;
        stations.forEach((id, station) => {
          lines.push(`${id},${date},PRCP,${(year * 7 + day * 3 + station) % 97},,,7,`);
          lines.push(
            `${id},${date},TMAX,${month * 40 + station},,,7,`,
            `${id},${date},TMIN,${month * 10},,,7,`,
          );
        });
      }
    }
    const path = join(folder, `${year}.csv`);
    writeFileSync(path, `${lines.join('\n')}\n`);
    return path;
  });
}

/** Days of one of those files, a station. [d] */
export const daysOfYear = (year: number): number => dayNumberOf(year, 7, 1) - dayNumberOf(year, 1, 1);
