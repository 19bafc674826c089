import { InvalidInputError } from '../../errors.ts';
import type { INTERCEPTION_CROPS } from '../../schema/codes.ts';

/** One of {@link INTERCEPTION_CROPS}. */
export type InterceptionCrop = (typeof INTERCEPTION_CROPS)[number];

/** A sward sprayed long after sowing: the one case in which the table leaves the growth stage aside. */
export type InterceptionPhase = 'established turf';

/** Interception in the stage groups 00-09, 10-19, 20-29, 30-39, 40-89 and 90-99. [–] */
type StageRow = readonly [number, number, number, number, number, number];

// The source prints one group 20-39; it splits cereals there into tillering (BBCH 20-29) and stem
// elongation (BBCH 30-39), every other crop has the same value in both.
const TABLE: Readonly<Record<InterceptionCrop, StageRow>> = {
  cereals: [0, 0.25, 0.5, 0.7, 0.9, 0.9],
  maize: [0, 0.25, 0.5, 0.5, 0.75, 0.9],
  'oilseed rape': [0, 0.4, 0.8, 0.8, 0.8, 0.9],
  soybean: [0, 0.35, 0.55, 0.55, 0.85, 0.65],
  pea: [0, 0.35, 0.55, 0.55, 0.85, 0.85],
  bean: [0, 0.25, 0.4, 0.4, 0.7, 0.8],
  sunflower: [0, 0.2, 0.5, 0.5, 0.75, 0.9],
  'sugar beet': [0, 0.2, 0.7, 0.7, 0.9, 0.9],
  potato: [0, 0.15, 0.5, 0.5, 0.8, 0.5],
  cotton: [0, 0.3, 0.6, 0.6, 0.75, 0.9],
  linseed: [0, 0.3, 0.6, 0.6, 0.7, 0.9],
  grass: [0, 0.4, 0.6, 0.6, 0.9, 0.9],
};

const ESTABLISHED_TURF_INTERCEPTION = 0.9;

/** Column of {@link TABLE} for a growth stage. */
function stageColumn(growthStageBbch: number): number {
  if (growthStageBbch < 40) return Math.floor(growthStageBbch / 10);
  return growthStageBbch < 90 ? 4 : 5;
}

/**
 * Share of a spray that stays on a growing crop, by its growth stage. [–]
 *
 * Equation   table look-up, one value per group of stages
 * Symbols    crop = one of INTERCEPTION_CROPS
 *            growthStageBbch = BBCH code [–], whole number 0 to 99
 *            phase = 'established turf' for an old sward of grass, 0.90 whatever the stage
 * Valid      a green crop at normal density; bare ground, stubble and mulch are not in the table;
 *            another code, or turf of a crop that is not grass -> InvalidInputError
 * Source     EPPO PP 1/207(2), Appendix 2
 * Checked    test/published/interception.json
 * @example   interceptionByStage('cereals', 31) // 0.7
 */
export function interceptionByStage(
  crop: InterceptionCrop,
  growthStageBbch: number,
  phase?: InterceptionPhase,
): number {
  if (!Number.isInteger(growthStageBbch) || growthStageBbch < 0 || growthStageBbch > 99) {
    throw new InvalidInputError(
      'NO_SUCH_GROWTH_STAGE',
      `Growth stage ${growthStageBbch} is not a BBCH code; it must be a whole number from 0 to 99.`,
      {
        hint: 'Give the two-digit BBCH code of the crop on the day of spraying.',
        details: { growthStageBbch },
      },
    );
  }
  if (phase === 'established turf') {
    if (crop === 'grass') return ESTABLISHED_TURF_INTERCEPTION;
    throw new InvalidInputError(
      'TURF_IS_GRASS',
      `Established turf was given for ${crop}; it must go with grass.`,
      { hint: 'Leave the phase out, or choose grass.', details: { crop, phase } },
    );
  }
  return TABLE[crop][stageColumn(growthStageBbch)];
}
