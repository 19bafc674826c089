import { seasonOdds } from '../analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import type { StationClimate } from '../analysis/stationClimate.ts';
import { isoDateOf } from '../calendar.ts';
import { treatmentLoad } from '../model/deposit/soilLoad.ts';
import type { Answer } from '../schema/answer.ts';
import { mainApplications } from './fieldTreatments.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';

/**
 * The field's zones of another overlap, each answered as the field is. Evidence counts for the soil it was taken from:
 * the field's main part. Without a half-life no other dose can be reckoned, and a zone has no odds.
 */
export function zonesOf(
  resolved: ResolvedQuestion,
  climate: StationClimate,
  asked: SeasonQuestion,
): Answer['zones'] {
  const { zones, rateFraction } = resolved.question;
  const main = mainApplications(resolved);
  return zones.map(({ name, overlapFactor }) => {
    if (resolved.halfLife.halfLifeDays === null) {
      return { name, overlapFactor, oddsAtPlanting: null, clearDate: null };
    }
    const load = treatmentLoad(rateFraction, overlapFactor);
    const applications = asked.applications.map((one, index) => (index < main ? { ...one, load } : one));
    const odds = seasonOdds(climate, { ...asked, applications, sampled: asked.applications });
    return {
      name,
      overlapFactor,
      oddsAtPlanting: odds.oddsAtPlanting,
      clearDate: odds.clearOffset === null ? null : isoDateOf(odds.firstDay + odds.clearOffset),
    };
  });
}
