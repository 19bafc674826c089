import { sharedSeasons } from '../../src/app/sharedSeasons.ts';
import { isoDateOf, parseIsoDate } from '../../src/calendar.ts';
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
import { sizesOf } from './sizes.ts';

const RESIDUALS = 30;
const field = { station: 'demo-invented', soilClass: 'loam' as const };

/**
 * Median time of a question that differs on each turn. [ms]
 * @param warmUp turns before the clock counts: the run-time's compilers settle after some thirty comparisons of all crops
 */
async function timed(
  { runs, warmUp }: Readonly<Record<'runs' | 'warmUp', string>>,
  run: (turn: number) => Promise<unknown>,
): Promise<number> {
  const times: number[] = [];
  for (let turn = 0; turn < Number(runs) + Number(warmUp); turn++) {
    const start = performance.now();
    await run(turn);
    if (turn >= Number(warmUp)) times.push(performance.now() - start);
  }
  return medianOf(times);
}

/** A date of its own for each turn. */
const dateOf = (first: string, turn: number) => isoDateOf(parseIsoDate(first) + turn);

/** Comparison, grid and answer on 60 years of weather whose sums are there already. */
export async function benchComparisons(argv: string[]): Promise<void> {
  const sizes = sizesOf(argv, {
    runs: { full: 31, small: 1 },
    warmUp: { full: 40, small: 0 },
    crops: { full: 25, small: 3 },
  });
  const whole = loadCatalogue(readDataFolder(new URL('../../data', import.meta.url)));
  const climates: ClimateCache = createClimateCache(createDemoReader());
  const actives = whole.actives
    .filter(({ fieldHalfLifeDays, soilResidual }) => fieldHalfLifeDays !== null && soilResidual === 'yes')
    .slice(0, RESIDUALS);
  const deps = { version: 'bench', climates, catalogue: { ...whole, actives }, seasons: sharedSeasons() };
  const crops = whole.crops.slice(0, Number(sizes.crops)).map(({ name }) => name);

  const compareAll = async (turn: number) => {
    for (const crop of crops) {
      const question: ComparisonInput = {
        ...field,
        crop,
        // A season of its own on each turn: only the crops of one turn share it.
        appliedOn: dateOf('2026-07-01', turn),
        plantOn: dateOf('2027-05-01', turn),
      };
      await compareResiduals(question, deps);
    }
  };
  report('compare_warm_ms', await timed(sizes, compareAll), 'ms', {
    residuals: actives.length,
    crops: crops.length,
    years: 60,
  });

  const grid = (turn: number) => {
    const question: CropGridInput = {
      ...field,
      residual: 'imazethapyr',
      crops,
      appliedOn: dateOf('2026-07-01', turn),
      plantFrom: '2027-04-01',
      plantTo: '2027-09-27',
      stepDays: 1,
    };
    return cropByDate(question, deps);
  };
  report('grid_warm_ms', await timed(sizes, grid), 'ms', { crops: crops.length, dates: 180, years: 60 });

  const plan = (turn: number) =>
    answerField({ ...demoQuestion, asOf: undefined, plantOn: dateOf('2027-05-01', turn) }, deps);
  report('answer_warm_ms', await timed(sizes, plan), 'ms', { years: 60 });
  const season = (turn: number) =>
    answerField({ ...demoQuestion, plantOn: dateOf('2027-05-01', turn) }, deps);
  report('answer_warm_as_of_ms', await timed(sizes, season), 'ms', { years: 60 });
}
