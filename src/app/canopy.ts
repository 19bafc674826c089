import { InvalidInputError } from '../errors.ts';
import { interceptionByStage } from '../model/deposit/interceptionByStage.ts';
import type { Question } from '../schema/question.ts';

/**
 * Share of a spray that green leaves catch: as given, or by the growth stage of the crop that was sprayed over. [0-1]
 *
 * @throws {InvalidInputError} CANOPY_TWICE where both are given, TURF_IS_GRASS
 */
export function canopyOf({
  canopyFraction,
  growthStage,
}: Pick<Question, 'canopyFraction' | 'growthStage'>): number {
  if (growthStage === undefined) return canopyFraction;
  if (canopyFraction > 0) {
    throw new InvalidInputError(
      'CANOPY_TWICE',
      'Both a share of spray caught by leaves and a growth stage are given; each says the same.',
      { hint: 'Give one of the two.', details: { field: 'growthStage' } },
    );
  }
  const { plants, bbch, establishedTurf } = growthStage;
  return interceptionByStage(plants, bbch, establishedTurf ? 'established turf' : undefined);
}
