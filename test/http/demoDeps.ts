import { createClimateCache } from '../../src/app/climateCache.ts';
import { demoFarm } from '../../src/demo/demoFarm.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import type { HttpDeps } from '../../src/http/deps.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { noOutside } from './noOutside.ts';

const weather = createDemoReader();

/** What the routes need, over the embedded demo; its log goes nowhere. */
export const demoDeps: HttpDeps = {
  version: '1.2.3',
  catalogue,
  climates: createClimateCache(weather),
  weather,
  ...noOutside,
  example: { question: demoQuestion, farm: demoFarm },
  pageFolder: null,
  log: () => undefined,
};
