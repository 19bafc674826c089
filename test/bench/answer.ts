import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import {
  answerField,
  createClimateCache,
  createDemoReader,
  demoQuestion,
  loadCatalogue,
  readDataFolder,
} from '../../src/index.ts';
import { medianOf, report } from './report.ts';
import { sizesOf } from './sizes.ts';

const root = new URL('../../', import.meta.url);

/** The built program, started anew for each question. */
function coldProgram(starts: number): number[] {
  const program = fileURLToPath(new URL('dist/bin/drywake.js', root));
  const args = ['odds', '--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil'];
  const dates = ['--applied', '2026-08-14', '--plant', '2027-05-10', '--as-of', '2026-09-30', '--json'];
  return Array.from({ length: starts }, () => {
    const start = performance.now();
    execFileSync(process.execPath, [program, ...args, ...dates]);
    return performance.now() - start;
  });
}

/** Questions that differ in their planting date, on climate that is there already. */
async function warmAnswers(asOf: string | undefined, runs: number): Promise<number[]> {
  const deps = {
    version: 'bench',
    catalogue: loadCatalogue(readDataFolder(new URL('data', root))),
    climates: createClimateCache(createDemoReader()),
  };
  const times: number[] = [];
  for (let run = 0; run < runs + 5; run++) {
    const plantOn = `2027-05-${String(run + 1).padStart(2, '0')}`;
    const start = performance.now();
    await answerField({ ...demoQuestion, asOf, plantOn }, deps, { season: true });
    if (run >= 5) times.push(performance.now() - start);
  }
  return times;
}

/** Times of one answer, cold and warm. */
export async function benchAnswer(argv: string[]): Promise<void> {
  const sizes = sizesOf(argv, { starts: { full: 5, small: 1 }, runs: { full: 15, small: 1 } });
  const [starts, runs] = [Number(sizes.starts), Number(sizes.runs)];
  report('answer_cold_program_ms', medianOf(coldProgram(starts)), 'ms');
  report('answer_warm_plan_ms', medianOf(await warmAnswers(undefined, runs)), 'ms');
  report('answer_warm_season_ms', medianOf(await warmAnswers(demoQuestion.asOf, runs)), 'ms');
}
