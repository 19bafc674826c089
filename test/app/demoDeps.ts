import { createClimateCache } from '../../src/app/climateCache.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { catalogue } from '../catalogue/loaded.ts';

/** What answers on the invented demo record need. */
export const demoDeps = {
  version: '1.2.3',
  catalogue,
  climates: createClimateCache(createDemoReader()),
};

/** Field and season of the comparisons: no residual, no crop, no planting date. */
export const demoSeason = { station: 'demo-invented', soilClass: 'loam', appliedOn: '2026-08-14' } as const;
