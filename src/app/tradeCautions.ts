import type { StationClimate } from '../analysis/stationClimate.ts';
import { civilDateOf, isoDateOf, parseIsoDate } from '../calendar.ts';
import { sameDateInYear } from '../model/calendar/interval.ts';
import type { Caution } from '../schema/answer.ts';
import { meanAnnualRainMm } from './meanAnnualRain.ts';
import { carriesOver } from './resolveQuestion.ts';
import type { Say } from './say.ts';
import type { StationWeather } from './stationWeather.ts';
import type { Treatment } from './treatment.ts';

/** Rain of a mean year under which a season more is advised: 15 inches. [mm] */
const DRY_ZONE_MM = 381;
/** A year counts as drought here when its last twelve months are among this driest share of the record [0-1]. */
const DROUGHT_SHARE = 0.2;
const YEAR_DAYS = 365;
/** Sums closer than this are the same: half of what a gauge tells apart. [mm] */
const SAME_RAIN_MM = 0.05;

/** Rules of the trade that stand beside the model's dates and never set one. */
export function tradeCautions(treatment: Treatment, weather: StationWeather, say: Say): Caution[] {
  return [...standUseCautions(treatment), ...seasonMore(treatment, weather, say)];
}

const TWO_WAITS =
  'One label number can stand for two waits: until the crop is safe, and until what is harvested or grazed is clean enough for food and feed.';

/** Which of the two waits behind a label's number holds for this stand. */
function standUseCautions({
  resolved: { question, crop, cropName },
  foodFeedInterval,
}: Treatment): Caution[] {
  const { standUse } = question;
  const say = (text: string): Caution[] => [{ code: 'stand-use', text: `${TWO_WAITS} ${text}` }];
  const own = foodFeedInterval === null ? '' : `Your label gives the second apart, ${foodFeedInterval}: `;
  if (standUse === 'cover only') {
    return say(
      foodFeedInterval === null
        ? 'Where a cover crop is neither grazed nor harvested, some labels and local rules let the grower sow it earlier at his own risk. That is not applied here: the label date stands, so read what yours says.'
        : `${own}it is left out, for this stand is to be neither harvested nor grazed, and it counts as soon as it is. The label date is that of the crop’s own interval.`,
    );
  }
  if (foodFeedInterval !== null) {
    return say(
      `${own}the label date is the later of both, for the stand is ${standUse ?? 'taken to be harvested'}.`,
    );
  }
  if (standUse === 'grazed') {
    return say(
      'A stand that is grazed or cut for hay falls under both, whatever the odds of injury are; look for a grazing or haying limit on the label as well.',
    );
  }
  return standUse === undefined && crop?.use.coverCrop === 'yes'
    ? say(
        `${capital(cropName)} is taken to be harvested; say so where it is grazed, or grown as a cover alone.`,
      )
    : [];
}

function seasonMore({ resolved }: Treatment, { climate }: StationWeather, say: Say): Caution[] {
  if (!carriesOver(resolved)) return [];
  const { question } = resolved;
  const mean = meanAnnualRainMm(climate);
  const dryZone = mean !== null && mean < DRY_ZONE_MM;
  const dryYear = question.asOf === undefined ? null : droughtOf(climate, parseIsoDate(question.asOf), say);
  if (!dryZone && dryYear === null) return [];
  const reasons = [
    ...(dryZone ? [`a mean year brings ${say.water(mean)}, under ${say.water(DRY_ZONE_MM)}`] : []),
    ...(dryYear === null ? [] : [dryYear]),
  ];
  return [
    {
      code: 'season-more',
      text: `Add one season before a sensitive crop, for ${reasons.join(', and ')}. ${sensitivityWords(resolved)} Common practice, no source; it stands beside the dates above and moves none.`,
    },
  ];
}

/** Whether the crop is known to be sensitive to one of the groups sprayed. */
function sensitivityWords({ active, groups, crop, cropName }: Treatment['resolved']): string {
  const known = crop?.sensitivity?.groups ?? [];
  const hurting = (groups ?? '').split(' + ').filter((group) => known.includes(group));
  if (hurting.length > 0) {
    return `${capital(cropName)} is usually sensitive to residues of group ${hurting.join(' and ')}.`;
  }
  return `Nothing is held here on how sensitive ${cropName} is to ${active?.isoName ?? 'this residual'}.`;
}

/** What makes the twelve months up to a day a drought, in words; null where they are none or cannot be ranked. */
function droughtOf({ series, windows }: StationClimate, asOfDay: number, say: Say): string | null {
  const sumTo = (day: number): number | null => {
    const from = day - YEAR_DAYS + 1 - series.firstDay;
    if (!windows.usable(from, YEAR_DAYS)) return null;
    let sum = 0;
    for (let index = from; index < from + YEAR_DAYS; index++) sum += series.rainMm[index];
    return sum;
  };
  const own = sumTo(asOfDay);
  if (own === null) return null;
  const { year: asOfYear } = civilDateOf(asOfDay);
  const sums: number[] = [];
  const { year: last } = civilDateOf(series.firstDay + series.days - 1);
  for (let { year } = civilDateOf(series.firstDay); year <= last; year++) {
    const sum = year === asOfYear ? null : sumTo(sameDateInYear(asOfDay, year));
    if (sum !== null) sums.push(sum);
  }
  const asDry = sums.filter((sum) => sum <= own + SAME_RAIN_MM).length;
  return sums.length >= 10 && asDry < DROUGHT_SHARE * sums.length
    ? `the twelve months to ${say.dates.full(isoDateOf(asOfDay))} brought ${say.water(own)}, among the driest fifth of the record`
    : null;
}

const capital = (text: string): string => text[0].toUpperCase() + text.slice(1);
