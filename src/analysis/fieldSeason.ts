import { oddsRange } from '../model/odds/oddsRange.ts';
import { historicalYears } from './historicalYears.ts';
import type { PairAnswer, PairSeason } from './pairSeason.ts';
import { type SeasonOdds, seasonHorizon, seasonOdds } from './seasonOdds.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import type { StationClimate } from './stationClimate.ts';
import { thirdsOf } from './thirds.ts';

/**
 * Several applications before one crop, for any planting date: the same figures as {@link seasonOdds}. Planting dates
 * that leave the same usable years share one season.
 *
 * @throws {MissingDataError} TOO_FEW_YEARS, from `at`
 */
export function fieldSeason(climate: StationClimate, question: SeasonQuestion): PairSeason {
  const { firstDay, labelOffset } = seasonHorizon(question);
  const known = new Map<string, SeasonOdds>();
  const seasonFor = (plantDay: number): SeasonOdds => {
    const plantOffset = plantDay - firstDay;
    const asked = { ...question, plantDay };
    const years = historicalYears(climate, firstDay, Math.max(labelOffset, plantOffset) + 1, question.base);
    // An outlook without a window of its own speaks of the days to planting.
    const byDate = question.outlook && question.outlook.toDay === undefined ? plantOffset : '';
    const key = `${years.map(({ year }) => year)} ${seasonHorizon(asked).horizonOffset} ${byDate}`;
    const found = known.get(key) ?? seasonOdds(climate, asked);
    known.set(key, found);
    return found;
  };
  return { firstDay, labelOffset, at: (plantDay) => answerOn(seasonFor(plantDay), plantDay - firstDay) };
}

function answerOn(season: SeasonOdds, plantOffset: number): PairAnswer {
  const { years, weights } = season;
  const oddsAtPlanting = season.oddsAt(plantOffset);
  let thirds: ReturnType<typeof thirdsOf> | undefined;
  return {
    oddsAtPlanting,
    years: years.length,
    thirdOdds(wanted) {
      thirds ??= thirdsOf(years, weights, plantOffset);
      return thirds.find(({ name }) => name === wanted)?.odds ?? 0;
    },
    range: () =>
      oddsRange(
        years.map(({ probabilityAt }) => probabilityAt(plantOffset)),
        weights,
        oddsAtPlanting,
      ),
    oddsAtLabel: () => season.oddsAtLabel,
    clearOffset: () => season.clearOffset,
  };
}
