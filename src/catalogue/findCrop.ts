import type { Catalogue, Crop } from '../schema/catalogue.ts';
import { findNamed } from './findNamed.ts';

/**
 * The rotation crop of that name or alias.
 * @throws {InvalidInputError} CROP_UNKNOWN; the hint names the nearest spelling, or all crops
 * @example findCrop(catalogue, 'Sugar Beets').name // 'sugarbeet'
 */
export function findCrop(catalogue: Catalogue, name: string): Crop {
  const crops = catalogue.crops.map((thing) => ({ names: [thing.name, ...thing.aliases], thing }));
  return findNamed('crop', 'CROP_UNKNOWN', name, crops);
}
