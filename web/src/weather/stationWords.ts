import type { StationCheck, StationExtent } from '../api/contract.ts';
import { rainText, type Units } from '../units/units.ts';

const percent = (fraction: number) => `${Number((fraction * 100).toPrecision(2))} %`;
const many = (count: number) => count.toLocaleString('en-US');

/** What the record is worth, in two sentences. */
export function sayWorth(check: StationCheck, units: Units): string {
  const first = Number(check.firstDate.slice(0, 4));
  const last = Number(check.lastDate.slice(0, 4));
  const missing =
    check.rainMissingFraction === 0
      ? 'no day of them lacks rain'
      : `${percent(check.rainMissingFraction)} of their days lack a reading of rain`;
  const rain =
    check.meanAnnualRainMm === null
      ? ' No year is complete enough for a yearly mean.'
      : ` A year brings ${rainText(check.meanAnnualRainMm, units)} of rain, by ${many(check.fullYears)} complete ${check.fullYears === 1 ? 'year' : 'years'}.`;
  return `${first} to ${last}: ${missing}.${rain}`;
}

/** How complete the months are. */
export function sayCompleteness({ completeness }: StationCheck, element: 'rain' | 'temperatures'): string {
  const months = completeness.reduce(
    (sum, year) => sum + (element === 'rain' ? year.rainMonths : year.temperatureMonths),
    0,
  );
  const all = completeness.length * 12;
  const whole = completeness.filter(
    (year) => (element === 'rain' ? year.rainMonths : year.temperatureMonths) === 12,
  ).length;
  const thing = element === 'rain' ? 'a rain total that stands' : 'a mean temperature that stands';
  if (months === 0) return `No month has ${thing}.`;
  return `${many(months)} of ${many(all)} months have ${thing}; ${many(whole)} of ${many(completeness.length)} years have all twelve.`;
}

/** The last twelve months against normal. */
export function sayRecent(recent: NonNullable<StationCheck['recent']>, units: Units): string {
  const { months, monthsCounted, rainMm, normalMm, percentOfNormal } = recent;
  if (percentOfNormal === null) return 'None of the last twelve months has both a total and a normal.';
  const of =
    monthsCounted === months.length ? 'The last twelve months' : `${monthsCounted} of the last twelve months`;
  return `${of} brought ${Math.round(percentOfNormal)} % of normal rain: ${rainText(rainMm, units)}, where ${rainText(normalMm, units)} is normal.`;
}

/** The worked example's own record. */
const EXAMPLE = 'demo-invented';

/** How many records there are, what of them is invented, and what to do next. */
export function stationCount(stations: readonly Pick<StationExtent, 'id' | 'invented'>[]): string {
  const real = stations.filter(({ invented }) => !invented).length;
  const others = stations.filter(({ id, invented }) => invented && id !== EXAMPLE).length;
  const hasExample = stations.some(({ id }) => id === EXAMPLE);
  const invented = [
    ...(others > 0 ? [`${countOf(others, 'other invented record')}`] : []),
    ...(hasExample ? ['the invented one of the worked example'] : []),
  ].join(' and ');
  if (real > 0) {
    return `${real === 1 ? 'One station' : `${real.toLocaleString('en-US')} stations`} of daily weather${invented && `, beside ${invented}`}. Tap the map where your field lies, and the station to take is named.`;
  }
  const here =
    others > 0
      ? `Only invented records are here: ${invented}.`
      : hasExample
        ? 'Only the invented record of the worked example is here.'
        : 'No record is here.';
  return `${here} Drop the files of the stations around your fields, and every answer counts their years.`;
}

const countOf = (n: number, noun: string): string =>
  `${n.toLocaleString('en-US')} ${noun}${n === 1 ? '' : 's'}`;
