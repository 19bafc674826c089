import type { DateWords } from '../dateWords.ts';
import type { Answer } from '../schema/answer.ts';
import { curveAt } from './oddsSeason.ts';
import { sayOdds } from './saidWords.ts';
import { driestYear } from './yearScatter.ts';

type Season = NonNullable<Answer['season']>;

/** What the twenty dots show. */
export function dotsFinding(season: Season, plantOn: string, crop: string, dates: DateWords): string {
  const after = season.quantileDates.filter((date) => date === null || date > plantOn).length;
  if (after === 0)
    return `All 20 dots lie before ${dates.monthDay(plantOn)}: by then the field is clear for ${crop}.`;
  if (after === 20) return `All 20 dots lie after ${dates.monthDay(plantOn)}: too early for ${crop}.`;
  return `${after} of 20 dots ${after === 1 ? 'lies' : 'lie'} after ${dates.monthDay(plantOn)}: that often the field is not yet clear for ${crop}.`;
}

/** How the odds fall over the season. */
export function seasonFinding(
  season: Season,
  { labelDate, clearDate, oddsAtLabelDate }: Answer,
  dates: DateWords,
): string {
  const atLabel = oddsAtLabelDate ?? curveAt(season.odds, season.startDate, labelDate) ?? 1;
  if (clearDate === labelDate) {
    return `On the label date, ${dates.monthDay(labelDate)}, the odds are already within your limit.`;
  }
  const start = `From ${sayOdds(atLabel)} on the label date, ${dates.near(labelDate, season.startDate)},`;
  return clearDate === null
    ? `${start} the odds do not come down to your limit within the search.`
    : `${start} the odds come down to your limit on ${dates.near(clearDate, labelDate)}.`;
}

/**
 * Rain so far against normal, in one sentence with one percentage.
 * @param rainText millimetres as they are shown, with their unit
 */
export function rainFinding(
  season: Season,
  observedThrough: string | null,
  rainText: (mm: number) => string,
  dates: DateWords,
): string {
  const { observedMm, normalMm, percentOfNormal } = season.rain;
  if (observedThrough === null || observedThrough < season.startDate) {
    return 'No rain of this season is known yet; the outlines are what is normal.';
  }
  const share = percentOfNormal === null ? '' : `, ${Math.round(percentOfNormal)} % of normal`;
  return `${rainText(observedMm)} of rain from spraying to ${dates.monthDay(observedThrough)}${share} (${rainText(normalMm)}).`;
}

/** How much warm rain matters among the past years. */
export function yearsFinding({ thirds, years }: Answer): string {
  const dry = thirds.find(({ name }) => name === 'dry');
  const wet = thirds.find(({ name }) => name === 'wet');
  const driest = driestYear(years);
  if (!dry || !wet || !driest) return 'The years behind the odds.';
  const [d, w] = [Math.round(dry.odds * 20), Math.round(wet.odds * 20)];
  const finding =
    d > w
      ? `Dry years are worse: ${d} in 20, against ${w} in 20 in wet ones.`
      : d < w
        ? `Dry years are no worse here: ${d} in 20, against ${w} in 20 in wet ones.`
        : `Dry and wet years come out alike here, near ${d} in 20.`;
  return `${finding} The driest was ${driest.year}.`;
}
