import type { Catalogue, Crop } from '../schema/catalogue.ts';
import { findNamed, namesOf } from './findNamed.ts';

/**
 * The rotation crop of that name or alias.
 * @throws {InvalidInputError} CROP_UNKNOWN; the hint names the nearest spelling, or all crops
 * @example findCrop(catalogue, 'Sugar Beets').name // 'sugarbeet'
 */
export function findCrop(catalogue: Catalogue, name: string): Crop {
  return findNamed('crop', 'CROP_UNKNOWN', name, namesOf(catalogue.crops, nameOfCrop));
}

const nameOfCrop = ({ name, aliases }: Crop): string[] => [name, ...aliases];
