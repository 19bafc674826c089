import { regionCollection } from '../../../src/chart/regionFeature.ts';
import { twentieths } from '../answer/oddsInWords.ts';
import type { RegionRow } from '../api/contract.ts';
import type { Column } from '../charts/csv.ts';
import { rainNumber, rainUnit, type Units } from '../units/units.ts';
import type { RegionAnswer } from './useRegion.ts';

type Figures = NonNullable<RegionRow['figures']>;

const figure = (
  head: string,
  of: (figures: Figures) => string | number | null | undefined,
): Column<RegionRow> => ({
  head,
  cell: ({ figures }) => (figures && of(figures)) ?? null,
  number: true,
});

/** Everything that is known of each station, units in the heads; dates stand as YYYY-MM-DD in every file. */
export function fileColumns(rows: readonly RegionRow[], units: Units): Column<RegionRow>[] {
  const unit = rainUnit(units);
  const rules = [...new Set(rows.flatMap(({ figures }) => figures?.counted.map(({ id }) => id) ?? []))];
  return [
    { head: 'Station', cell: ({ station }) => station },
    { head: 'Name', cell: ({ name }) => name },
    { head: 'Invented', cell: ({ invented }) => (invented ? 'yes' : 'no') },
    { head: 'Latitude, °', cell: ({ latitudeDeg }) => latitudeDeg, number: true },
    { head: 'Longitude, °', cell: ({ longitudeDeg }) => longitudeDeg, number: true },
    { head: 'Soil', cell: ({ soilClass }) => soilClass },
    { head: 'Record from', cell: ({ firstDate }) => firstDate, dates: 'day' },
    { head: 'Record to', cell: ({ lastDate }) => lastDate, dates: 'day' },
    { head: 'Days with rain read, %', cell: ({ rainPercent }) => rainPercent.toFixed(1), number: true },
    { head: 'Temperatures of', cell: ({ temperatureStation }) => temperatureStation?.id ?? null },
    figure('Years', ({ years }) => years),
    figure('Odds this season, in 20', ({ oddsNow }) => (oddsNow === null ? null : twentieths(oddsNow))),
    figure('Odds in a normal year, in 20', ({ oddsNormal }) => twentieths(oddsNormal)),
    figure('Range from, in 20', ({ oddsRange }) => twentieths(oddsRange.low)),
    figure('Range to, in 20', ({ oddsRange }) => twentieths(oddsRange.high)),
    figure('Years the label interval was not enough, %', (one) => (one.labelTooShortShare * 100).toFixed(0)),
    figure('Label date', ({ labelDate }) => labelDate),
    figure('Clear date', ({ clearDate }) => clearDate ?? 'not within the search'),
    figure('Days after the label date', ({ daysAfterLabel }) => daysAfterLabel),
    figure(
      `June to August rain, ${unit}`,
      ({ summerRain }) => summerRain && rainNumber(summerRain.mm, units),
    ),
    figure('June to August rain, % of normal', ({ summerRain }) => summerRain?.percentOfNormal?.toFixed(0)),
    figure(`Warm rain, ${unit}`, ({ warmRain }) => warmRain && rainNumber(warmRain.mm, units)),
    figure('Warm rain, % of normal', ({ warmRain }) => warmRain?.percentOfNormal?.toFixed(0)),
    ...rules.flatMap((rule) => {
      const of = ({ counted }: Figures) => counted.find(({ id }) => id === rule);
      return [
        figure(`${rule} counted, ${unit}`, (figures) => {
          const one = of(figures);
          return one && rainNumber(one.sumMm, units);
        }),
        figure(`${rule} under its threshold`, (figures) => {
          const under = of(figures)?.under;
          return under == null ? null : under ? 'yes' : 'no';
        }),
      ];
    }),
    { head: 'Why not this season', cell: ({ notNow }) => notNow },
    { head: 'Why no answer', cell: ({ reason }) => reason },
  ];
}

/** All stations as GeoJSON, with the names and units of the interface. */
export const geoJsonOf = ({ start, rows }: RegionAnswer): string =>
  JSON.stringify(regionCollection(start, rows));

/** Beginning of the names of the files. */
export const regionStem = ({ start }: RegionAnswer): string =>
  ['drywake-region', start.residual, start.crop, start.question.plantOn]
    .join('-')
    .replaceAll(/[^\w.-]+/g, '-');
