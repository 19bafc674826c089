import type { StationWeather } from './stationWeather.ts';

/**
 * What stands under every table of residuals or crops.
 * @param others how many other treatments of the field stand beside each row
 */
export function sharedCautions({ climate }: StationWeather, others: number): string[] {
  const { station } = climate.series;
  return [
    ...(station.invented ? [`Invented example: the weather of ${station.name} never fell anywhere.`] : []),
    ...(others === 0
      ? []
      : [
          `${others === 1 ? 'The field’s other treatment counts' : `The field’s ${others} other treatments count`} in every row: residues of one group add up, of different groups the worst governs, and the latest label date holds.`,
        ]),
    'Intervals that do not come from your own label entries are published figures or from memory, for planning only: confirm each from the label of the product in your shed. The label is the law and the floor.',
    'Odds are a model’s estimate from past weather, not a promise; field evidence and the label’s conditions in words are looked at field by field.',
  ];
}
