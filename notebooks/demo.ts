import {
  type AnswerDeps,
  createClimateCache,
  createDemoReader,
  demoQuestion,
  loadCatalogue,
  type QuestionInput,
  readDataFolder,
  type WeatherReader,
} from '../src/index.ts';
import { VERSION } from './kit/version.ts';

const catalogue = loadCatalogue(readDataFolder(new URL('../data', import.meta.url)));

/** What answering needs, over a reader of weather. */
export const depsOver = (weather: WeatherReader): AnswerDeps => ({
  version: VERSION,
  catalogue,
  climates: createClimateCache(weather),
});

/** The demo's own record: invented. */
export const demoDeps = depsOver(createDemoReader());

/** The worked question of the first screen, asked before anything is observed. */
export const plan: QuestionInput = { ...demoQuestion, asOf: undefined };
