import { InvalidInputError } from '../errors.ts';
import { textureGroupOf } from '../model/water/textureGroup.ts';
import { type SoilTexture, textureClassIn } from '../model/water/topsoilLayer.ts';
import type { Question } from '../schema/question.ts';
import type { TextureGroup } from '../schema/soil.ts';

type SoilOfQuestion = Pick<Question, 'soilClass' | 'sandPercent' | 'clayPercent'>;

/**
 * The texture that a question names: a class, or sand and clay; loam where it says nothing.
 * @throws {InvalidInputError} SOIL_INCOMPLETE
 */
export function textureOf({ soilClass, sandPercent, clayPercent }: SoilOfQuestion): SoilTexture {
  if (sandPercent === undefined && clayPercent === undefined) return { textureClass: soilClass ?? 'loam' };
  if (soilClass !== undefined || sandPercent === undefined || clayPercent === undefined) {
    throw new InvalidInputError(
      'SOIL_INCOMPLETE',
      soilClass === undefined
        ? 'Sand and clay must be given together.'
        : 'A soil is either a texture class or sand and clay, not both.',
      {
        hint: 'Give a class such as "loam", or both sand and clay in per cent.',
        details: { field: 'soilClass' },
      },
    );
  }
  if (sandPercent + clayPercent > 100) {
    throw new InvalidInputError(
      'SOIL_INCOMPLETE',
      `Sand ${sandPercent} % and clay ${clayPercent} % add up to more than 100 %.`,
      {
        hint: 'Sand, silt and clay share 100 %; silt is the rest.',
        details: { field: 'sandPercent' },
      },
    );
  }
  return { sand: sandPercent / 100, clay: clayPercent / 100 };
}

/** Whether labels count the soil as coarse, medium or fine; null where loam is taken for want of a texture. */
export function givenTextureGroup(question: SoilOfQuestion): TextureGroup | null {
  const isGiven = question.soilClass !== undefined || question.sandPercent !== undefined;
  return isGiven ? textureGroupOf(textureClassIn(textureOf(question))) : null;
}
