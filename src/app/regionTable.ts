export { regionCollection } from '../chart/regionFeature.ts';

import type { RegionEvent, RegionFigures, RegionRow } from '../schema/region.ts';
import type { FlatColumn } from './flatTable.ts';
import { madeColumns } from './madeColumns.ts';

type RegionStart = Extract<RegionEvent, { step: 'start' }>;

const figure = (
  name: string,
  type: FlatColumn<RegionRow>['type'],
  of: (figures: RegionFigures) => string | number | boolean | null | undefined,
): FlatColumn<RegionRow> => ({ name, type, cell: ({ figures }) => (figures && of(figures)) ?? null });

/**
 * Columns of a region: a line for each station, those that cannot answer with the reason.
 * @param rules ids of the counting windows, two columns each
 * @param start what was asked, and by which version it was answered
 */
export const regionTable = (rules: readonly string[], start: RegionStart): FlatColumn<RegionRow>[] => [
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
  ...madeColumns<RegionRow>(askedOf(start), start.model),
];

/** The question of a region in a few words. */
function askedOf({ residual, crop, question: { appliedOn, plantOn, asOf } }: RegionStart): string {
  const seen = asOf === undefined ? '' : `, weather up to ${asOf}`;
  return `${residual} sprayed ${appliedOn} before ${crop} planted ${plantOn}${seen}`;
}
