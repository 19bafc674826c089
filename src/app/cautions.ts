import { WANTED_YEARS } from '../analysis/historicalYears.ts';
import type { SeasonOdds } from '../analysis/seasonOdds.ts';
import { twentieths } from '../chart/saidWords.ts';
import type { Caution } from '../schema/answer.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import { citedSources } from './citedSources.ts';
import { otherTreatmentCautions } from './otherTreatmentCautions.ts';
import { phCaution } from './phCaution.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import type { Say } from './say.ts';
import type { StationWeather } from './stationWeather.ts';
import { weatherCautions } from './weatherCautions.ts';
import { count, sayDays } from './words.ts';

/** Days between the ends of two steps of the season that count as a jump over a winter. [d] */
const SEASON_JUMP_DAYS = 90;

/** All that a user must know beside the numbers, most pressing first. */
export function cautionsOf(
  resolved: ResolvedQuestion,
  weather: StationWeather,
  odds: SeasonOdds | null,
  catalogue: Catalogue,
  how: Say,
): Caution[] {
  const { station } = weather.climate.series;
  const { question, active, crop, interval, longerElsewhere } = resolved;
  const cautions: Caution[] = [];
  const say = (code: string, text: string) => cautions.push({ code, text });

  if (station.invented)
    say('invented', `Invented example: the weather of ${station.name} never fell anywhere.`);
  if (!interval.confirmed) {
    say(
      'interval-unconfirmed',
      `The interval of ${interval.text} is ${interval.fromMemory ? 'from memory' : 'a published figure'}, for planning only. Confirm it from the label of the product in your shed.`,
    );
  }
  if (interval.disagreement) say('interval-disagreement', interval.disagreement);
  cautions.push(...resolved.intervalRemarks);
  for (const text of longerElsewhere) say('interval-elsewhere', text);
  if (odds !== null && odds.years.length < WANTED_YEARS) {
    say(
      'few-years',
      `Only ${odds.years.length} years of weather stand behind these odds; at least ${WANTED_YEARS} are wanted.`,
    );
  }
  cautions.push(...weatherCautions(question, weather, odds, how));
  if (odds !== null) jumpCaution(odds, say);
  if (
    odds !== null &&
    resolved.beside.length === 0 &&
    question.evidence.length === 0 &&
    question.rateFraction * question.overlapFactor === 1 &&
    resolved.application.canopyFraction === 0
  ) {
    say(
      'half-life-cancels',
      'At full rate on bare soil the half-life cancels out: interval, weather and soil alone decide these odds.',
    );
  }
  cautions.push(...otherTreatmentCautions(resolved, how));
  const ph = phCaution(resolved);
  if (ph) say('ph', ph);
  if (active?.handling) say('handling', sentence(active.handling));
  for (const words of active?.cautions ?? []) {
    const { text, sources } = citedSources(words, catalogue);
    cautions.push({ code: 'active', text: sentence(text), ...(sources.length > 0 ? { sources } : {}) });
  }
  if (!active)
    say(
      'residual-unlisted',
      `${question.residual} is not in the catalogue; your own interval and half-life are used.`,
    );
  if (!crop) say('crop-unlisted', `${question.crop} is not in the catalogue; it is taken as you wrote it.`);
  say(
    'label',
    'The label is the law and the floor. Your own product label, local rules and licensed applicators govern.',
  );
  say(
    'estimate',
    'Odds are a model’s estimate from past weather, not a promise. A field bioassay helps where they are neither low nor high.',
  );
  say(
    'limits',
    'Not modelled: leaching, loss as vapour or by light, plant uptake, and soils that have learned to break the residue down faster.',
  );
  return cautions;
}

/** Winter stands between label and clear date: say why the date leaps. */
function jumpCaution(odds: SeasonOdds, say: (code: string, text: string) => void): void {
  const { clearOffset, labelOffset } = odds;
  if (clearOffset === null || clearOffset - labelOffset < SEASON_JUMP_DAYS) return;
  const middle = odds.oddsAt(Math.max(labelOffset, clearOffset - SEASON_JUMP_DAYS));
  const atClear = odds.oddsAt(clearOffset);
  const fallen = middle - atClear;
  if (fallen < 0.05) {
    say(
      'season-jump',
      `The clear date leaps a cold or dry season: in the ${sayDays(SEASON_JUMP_DAYS)} before it the odds hardly moved (from ${twentieths(middle)} to ${twentieths(atClear)} in 20), because nothing breaks down in frozen or dry soil.`,
    );
  }
}

const sentence = (text: string): string =>
  `${text[0].toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;

/** "within 3 years", or why the search ended earlier. */
export function notClearWords(odds: SeasonOdds): string {
  if (odds.searchEnded === 'record') return 'before fewer than ten years of the record are left to tell';
  return `within ${count(Math.round(odds.horizonOffset / 365.25), 'year')} of spraying`;
}
