import type { Active, Catalogue } from '../schema/catalogue.ts';
import { findNamed, namesOf } from './findNamed.ts';

/**
 * The active ingredient of that ISO common name or alias.
 * @throws {InvalidInputError} RESIDUAL_UNKNOWN; the hint names the nearest spelling, or all actives
 * @example findActive(catalogue, 'Flumioxazin').group // 14
 */
export function findActive(catalogue: Catalogue, name: string): Active {
  return findNamed('residual', 'RESIDUAL_UNKNOWN', name, namesOf(catalogue.actives, nameOfActive));
}

const nameOfActive = ({ isoName, aliases }: Active): string[] => [isoName, ...aliases];
