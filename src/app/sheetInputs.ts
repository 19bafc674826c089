import type { Answer } from '../schema/answer.ts';
import type { Sheet } from '../schema/sheet.ts';
import { organicMatterWords } from '../schema/soil.ts';
import type { Say } from './say.ts';
import { count } from './words.ts';

const percent = (fraction: number): string => `${Math.round(fraction * 100)} %`;

/** What the answer of a sheet rests on, line by line. */
export function sheetInputs({ inputs }: Answer, how: Say): Sheet['inputs'] {
  const { question, residual, interval, mainInterval, soil, labelEntry, canopyFraction } = inputs;
  const lines: Sheet['inputs'] = [];
  const say = (label: string, value: string) => lines.push({ label, value });
  say('Treatment', `${residual.name}, ${percent(question.rateFraction)} of the top label rate`);
  say(
    'Interval used',
    `${interval.text}${labelEntry === null ? ', as read from the label' : `, own entry ${labelEntry.entry.name}, label ${labelEntry.entry.labelVersion || 'of unknown version'}`}`,
  );
  if (mainInterval.text !== interval.text) say(`Interval of ${residual.name}`, mainInterval.text);
  if (question.overlapFactor !== 1) say('Overlap', `${question.overlapFactor} times the dose`);
  if (canopyFraction > 0) say('Caught by green leaves', percent(canopyFraction));
  if (residual.halfLifeDays !== null) say('Field half-life', count(residual.halfLifeDays, 'day'));
  for (const other of inputs.otherTreatments) {
    say(
      'Also sprayed',
      `${other.residual.name} on ${how.dates.full(other.appliedOn)}, interval ${other.interval.text}`,
    );
  }
  say(
    'Soil',
    `${soil.texture}, ${organicMatterWords(question.organicMatterPercent)}, ${percent(question.coverFraction)} covered${question.soilPh === undefined ? '' : `, pH ${question.soilPh}`}`,
  );
  if (question.irrigation.length > 0) {
    const mm = question.irrigation.reduce((sum, one) => sum + one.mm, 0);
    say('Irrigation', `${how.water(mm)} in all`);
  }
  if (question.restOfSeasonRain !== 1) {
    say('Rest of the season', `${percent(question.restOfSeasonRain)} of each year’s own rain`);
  }
  if (question.outlook) {
    const { belowPercent, nearPercent, abovePercent } = question.outlook;
    say('Outlook', `${belowPercent} % below, ${nearPercent} % near, ${abovePercent} % above normal`);
  }
  return lines;
}
