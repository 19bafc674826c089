import type { StationWeather } from './climateCache.ts';

/** What stands under every table of residuals or crops. */
export function sharedCautions({ climate }: StationWeather, labelEntry: string | undefined): string[] {
  const { station } = climate.series;
  return [
    ...(station.invented ? [`Invented example: the weather of ${station.name} never fell anywhere.`] : []),
    ...(labelEntry === undefined
      ? []
      : ['Your own label entries are not read in this table: every interval is the catalogue’s.']),
    'Intervals are published figures or from memory, for planning only: confirm each from the label of the product in your shed. The label is the law and the floor.',
    'Odds are a model’s estimate from past weather, not a promise; soil pH, carryover from earlier sprays and the label’s own conditions are looked at field by field.',
  ];
}
