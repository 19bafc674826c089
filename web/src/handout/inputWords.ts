import { ASSUMPTIONS } from '../../../src/schema/assumptionList.ts';
import { organicMatterWords } from '../../../src/schema/soil.ts';
import type { Answer } from '../api/contract.ts';
import { sayOddsLimit } from '../question/questionInWords.ts';
import { rainText, type Units } from '../units/units.ts';

/** All that was entered, in one paragraph; what stands at its usual value is said too. */
export function inputWords({ inputs, weather }: Answer, units: Units): string {
  const { question: q, residual, crop, soil, labelEntry } = inputs;
  const percent = (fraction: number) => `${Number((fraction * 100).toPrecision(3))} %`;
  const changed = ASSUMPTIONS.filter(({ key, standard }) => q.assume[key] !== standard).length;
  const parts = [
    `${residual.name}${residual.group ? ` (group ${residual.group})` : ''} at ${percent(q.rateFraction)} of the top label rate`,
    q.overlapFactor === 1 ? null : `${q.overlapFactor} times the dose in overlaps`,
    q.canopyFraction === 0 ? 'on bare ground' : `${percent(q.canopyFraction)} of it caught by leaves`,
    `before ${crop}${q.standUse && q.standUse !== 'harvested' ? `, ${q.standUse}` : ''}`,
    `${soil.texture} with ${organicMatterWords(q.organicMatterPercent)}, ${q.soilPh === undefined ? 'pH not given' : `pH ${q.soilPh}`}, ${percent(q.coverFraction)} of the ground covered`,
    residual.halfLifeDays === null
      ? null
      : `half-life ${residual.halfLifeDays} days (${residual.halfLifeOrigin})`,
    labelEntry === null ? null : `own label entry ${labelEntry.entry.name}, version ${labelEntry.version}`,
    q.gauge.length === 0 ? null : `${q.gauge.length} days of the own gauge`,
    q.irrigation.length === 0
      ? null
      : `${rainText(
          q.irrigation.reduce((sum, { mm }) => sum + mm, 0),
          units,
        )} of irrigation`,
    q.outlook
      ? `rain outlook ${q.outlook.belowPercent}, ${q.outlook.nearPercent}, ${q.outlook.abovePercent}`
      : null,
    q.restOfSeasonRain === 1 ? null : `${percent(q.restOfSeasonRain)} of usual rain from here on`,
    `near ${weather.station.name}`,
    `odds limit ${sayOddsLimit(q.oddsLimit)}`,
    changed === 0 ? null : `${changed} of the model’s assumptions changed`,
  ];
  return `${parts.filter((part) => part !== null).join('; ')}.`;
}
