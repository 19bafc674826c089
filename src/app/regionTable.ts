export { regionFeature } from '../chart/regionFeature.ts';

import type { RegionFigures, RegionRow } from '../schema/region.ts';
import type { FlatColumn } from './flatTable.ts';

const figure = (
  name: string,
  type: FlatColumn<RegionRow>['type'],
  of: (figures: RegionFigures) => string | number | boolean | null | undefined,
): FlatColumn<RegionRow> => ({ name, type, cell: ({ figures }) => (figures && of(figures)) ?? null });

/**
 * Columns of a region: a line for each station, those that cannot answer with the reason.
 * @param rules ids of the counting windows, two columns each
 */
export const regionTable = (rules: readonly string[]): FlatColumn<RegionRow>[] => [
  { name: 'station', type: 'text', cell: ({ station }) => station },
  { name: 'name', type: 'text', cell: ({ name }) => name },
  { name: 'latitude_deg', type: 'number', cell: ({ latitudeDeg }) => latitudeDeg },
  { name: 'longitude_deg', type: 'number', cell: ({ longitudeDeg }) => longitudeDeg },
  { name: 'elevation_m', type: 'number', cell: ({ elevationM }) => elevationM },
  { name: 'invented', type: 'truth', cell: ({ invented }) => invented },
  { name: 'soil_class', type: 'text', cell: ({ soilClass }) => soilClass },
  { name: 'first_date', type: 'date', cell: ({ firstDate }) => firstDate },
  { name: 'last_date', type: 'date', cell: ({ lastDate }) => lastDate },
  { name: 'rain_percent', type: 'number', cell: ({ rainPercent }) => rainPercent },
  {
    name: 'temperatures_from',
    type: 'text',
    cell: ({ temperatureStation }) => temperatureStation?.id ?? null,
  },
  figure('years', 'whole', ({ years }) => years),
  figure('odds_now', 'number', ({ oddsNow }) => oddsNow),
  figure('odds_normal', 'number', ({ oddsNormal }) => oddsNormal),
  figure('odds_low', 'number', ({ oddsRange }) => oddsRange.low),
  figure('odds_high', 'number', ({ oddsRange }) => oddsRange.high),
  figure('label_too_short_share', 'number', ({ labelTooShortShare }) => labelTooShortShare),
  figure('label_date', 'date', ({ labelDate }) => labelDate),
  figure('clear_date', 'date', ({ clearDate }) => clearDate),
  figure('days_after_label', 'whole', ({ daysAfterLabel }) => daysAfterLabel),
  figure('summer_rain_mm', 'number', ({ summerRain }) => summerRain?.mm),
  figure('summer_rain_percent_of_normal', 'number', ({ summerRain }) => summerRain?.percentOfNormal),
  figure('warm_rain_mm', 'number', ({ warmRain }) => warmRain?.mm),
  figure('warm_rain_percent_of_normal', 'number', ({ warmRain }) => warmRain?.percentOfNormal),
  ...rules.flatMap((rule) => {
    const of = ({ counted }: RegionFigures) => counted.find(({ id }) => id === rule);
    return [
      figure(`${rule.toLowerCase()}_mm`, 'number', (figures) => of(figures)?.sumMm),
      figure(`${rule.toLowerCase()}_under`, 'truth', (figures) => of(figures)?.under),
    ];
  }),
  { name: 'not_now', type: 'text', cell: ({ notNow }) => notNow },
  { name: 'problem', type: 'text', cell: ({ reason }) => reason },
];
