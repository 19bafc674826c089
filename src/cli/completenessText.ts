import type { Units } from '../quantities.ts';
import type { MonthCompleteness, YearCompleteness } from '../schema/completeness.ts';
import type { StationCheck } from '../schema/stationCheck.ts';
import { pairLines, sayRain } from './rainWords.ts';

/** Years printed month by month. */
const YEARS_SHOWN = 20;

/** A month's mark: whole, total or mean still stands, does not stand, nothing there. */
const MARKS = { complete: '#', accumulated: '+', kept: '+', incomplete: '-', none: '.' } as const;

/** Completeness, recent rain and odd values of a record, in lines. */
export function completenessText(
  { completeness, normals, recent, implausible }: StationCheck,
  units: Units,
): string {
  const whole = completeness.filter(isWhole).length;
  const partial = completeness.filter((year) => !isWhole(year));
  const shown = partial.slice(-YEARS_SHOWN);
  const lines = [
    `${whole} of ${completeness.length} calendar years have every rain total and mean temperature (WMO rules).`,
  ];
  if (shown.length > 0) {
    lines.push(
      partial.length > shown.length ? `The latest ${shown.length} of the others:` : 'The others:',
      '',
      'Year  Rain          days  Temperatures  days',
      '      JFMAMJJASOND        JFMAMJJASOND',
      ...shown.map(yearLine),
      '',
      '# whole   + total or mean stands   - does not stand   . nothing there',
    );
  }
  const standing = normals.months.filter(({ stands }) => stands).length;
  lines.push(
    '',
    `Monthly rain normals stand for ${standing} of 12 months over ${normals.baseFrom}-${normals.baseTo} (${
      normals.standard ? 'the latest standard 30 years' : 'all years'
    }; 80 % of the years needed).`,
  );
  if (recent) lines.push('', 'Last twelve whole months', recentLines(recent, units));
  lines.push('', ...implausibleLines(implausible));
  return `${lines.join('\n')}\n`;
}

const isWhole = ({ months }: YearCompleteness): boolean =>
  months.every(({ rain, temperature }) => rain !== 'incomplete' && rain !== 'none' && stands(temperature));

const stands = (state: MonthCompleteness['temperature']): boolean => state === 'complete' || state === 'kept';

function yearLine({ year, months, rainDays, spreadDays, temperatureDays }: YearCompleteness): string {
  const rain = months.map((month) => MARKS[month.rain]).join('');
  const temperature = months.map((month) => MARKS[month.temperature]).join('');
  return `${year}  ${rain}  ${String(rainDays + spreadDays).padStart(4)}  ${temperature}  ${String(temperatureDays).padStart(4)}`;
}

function recentLines(
  { months, monthsCounted, rainMm, normalMm, percentOfNormal }: NonNullable<StationCheck['recent']>,
  units: Units,
): string {
  const rows = months.map(
    ({ month, missingDays, rainMm: own, normalMm: normal, percentOfNormal: percent }) => {
      const total = own === null ? `no total, ${missingDays} days missing` : sayRain(own, units);
      const against =
        normal === null
          ? 'no normal'
          : `normal ${sayRain(normal, units)}${percent === null ? '' : `, ${percent.toFixed(0)} %`}`;
      return [month, `${total.padEnd(28)}${against}`] as const;
    },
  );
  const whole =
    percentOfNormal === null
      ? 'no month has both total and normal'
      : `${sayRain(rainMm, units)} of ${sayRain(normalMm, units)}, ${percentOfNormal.toFixed(0)} % of normal, from ${monthsCounted} months`;
  return pairLines([...rows, ['Together', whole]]);
}

function implausibleLines(implausible: StationCheck['implausible']): string[] {
  if (implausible.length === 0) return ['Values that look wrong: none by the rules used.'];
  return [
    'Values that look wrong (kept as they are; the latest of each kind):',
    ...implausible.map(
      ({ rule, count, shown }) =>
        `${`${rule} (${count})`.padEnd(38)}${shown.map(({ date, value }) => `${date}: ${Number(value.toFixed(1))}`).join(', ')}`,
    ),
  ];
}
