import { sharedSeasons } from '../../src/app/sharedSeasons.ts';
import {
  answerField,
  type ClimateCache,
  type ComparisonInput,
  type CropGridInput,
  compareResiduals,
  createClimateCache,
  createDemoReader,
  cropByDate,
  demoQuestion,
  loadCatalogue,
  readDataFolder,
} from '../../src/index.ts';
import { medianOf, report } from './report.ts';

const RUNS = 15;
const WARM_UP = 6;
const CROPS = 25;
const RESIDUALS = 30;
const field = { station: 'demo-invented', soilClass: 'loam' as const };

/** Median time of a question that differs on each run. [ms] */
async function timed(run: (day: number) => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let turn = 0; turn < RUNS + WARM_UP; turn++) {
    const start = performance.now();
    await run(turn);
    if (turn >= WARM_UP) times.push(performance.now() - start);
  }
  return medianOf(times);
}

const dayOf = (turn: number) => String(turn + 1).padStart(2, '0');
const dateOf = (month: string, turn: number) => `2027-${month}-${dayOf(turn)}`;

/** Comparison, grid and answer on 60 years of weather whose sums are there already. */
export async function benchComparisons(): Promise<void> {
  const whole = loadCatalogue(readDataFolder(new URL('../../data', import.meta.url)));
  const climates: ClimateCache = createClimateCache(createDemoReader());
  const actives = whole.actives
    .filter(({ fieldHalfLifeDays, soilResidual }) => fieldHalfLifeDays !== null && soilResidual === 'yes')
    .slice(0, RESIDUALS);
  const deps = { version: 'bench', climates, catalogue: { ...whole, actives }, seasons: sharedSeasons() };
  const crops = whole.crops.slice(0, CROPS).map(({ name }) => name);

  const compareAll = async (turn: number) => {
    for (const crop of crops) {
      const question: ComparisonInput = {
        ...field,
        crop,
        // A season of its own on each turn: only the crops of one turn share it.
        appliedOn: `2026-08-${dayOf(turn)}`,
        plantOn: dateOf('05', turn),
      };
      await compareResiduals(question, deps);
    }
  };
  report('compare_warm_ms', await timed(compareAll), 'ms', {
    residuals: actives.length,
    crops: crops.length,
    years: 60,
  });

  const grid = (turn: number) => {
    const question: CropGridInput = {
      ...field,
      residual: 'imazethapyr',
      crops,
      appliedOn: `2026-08-${dayOf(turn)}`,
      plantFrom: '2027-04-01',
      plantTo: '2027-09-27',
      stepDays: 1,
    };
    return cropByDate(question, deps);
  };
  report('grid_warm_ms', await timed(grid), 'ms', { crops: crops.length, dates: 180, years: 60 });

  const plan = (turn: number) =>
    answerField({ ...demoQuestion, asOf: undefined, plantOn: dateOf('05', turn) }, deps);
  report('answer_warm_ms', await timed(plan), 'ms', { years: 60 });
  const season = (turn: number) => answerField({ ...demoQuestion, plantOn: dateOf('05', turn) }, deps);
  report('answer_warm_as_of_ms', await timed(season), 'ms', { years: 60 });
}
