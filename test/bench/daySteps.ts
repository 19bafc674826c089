import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { warmthFactors } from '../../src/model/run/breakdownSums.ts';
import { reusedColumns } from '../../src/model/run/columns.ts';
import { dailyForcing } from '../../src/model/run/dailyForcing.ts';
import { radiationTable } from '../../src/model/run/radiationTable.ts';
import { soilRun } from '../../src/model/run/soilRun.ts';
import { startDepletionOf } from '../../src/model/run/wetnessRun.ts';
import { topsoilLayer } from '../../src/model/water/topsoilLayer.ts';
import { prepareSeries } from '../../src/model/weather/prepareSeries.ts';
import { generatedRecord } from './generatedRecord.ts';
import { medianOf, report } from './report.ts';
import { sizesOf } from './sizes.ts';

const YEARS = 60;
/** A general exponent, so that no root stands in for the power. */
const RESPONSE = { q10: 2.58, moisture: 'dryness', moistureExponent: 0.47, snowStopsMm: 5 } as const;
const MELT = 2.74;
const LATITUDE = 45;

const layer = topsoilLayer({ textureClass: 'loam' }, 2, 0.6);

/** One full daily step of reference evapotranspiration, snow, soil warmth, water and breakdown, in one thread. */
export function benchDaySteps(argv: string[]): void {
  const { runs } = sizesOf(argv, { runs: { full: 61, small: 3 } });
  const series = prepareSeries(generatedRecord(1, YEARS));
  const columns = reusedColumns();
  const step = () => {
    columns.reset();
    const forcing = dailyForcing(series, LATITUDE, MELT, columns);
    const warmth = warmthFactors(forcing.soilTempC, forcing.snowMm, RESPONSE, columns);
    const start = startDepletionOf(layer);
    return soilRun(forcing.waterMm, forcing.et0Mm, warmth, layer, RESPONSE, start, columns).sums;
  };
  for (let warmUp = 0; warmUp < 30; warmUp++) step();
  const here: number[] = [];
  const inC: number[] = [];
  const native = compiled();
  const input = native && inputOf(series);
  // By turns and in processor time, so that a busy machine slows both alike.
  for (let round = 0; round < 5; round++) {
    for (let run = 0; run < Number(runs); run++) {
      const start = process.cpuUsage();
      step();
      const { user, system } = process.cpuUsage(start);
      here.push(((user + system) * 1e3) / series.days);
    }
    if (native)
      inC.push(
        Number(
          execFileSync(native.program, { input: input ?? '' })
            .toString()
            .split(' ')[0],
        ),
      );
  }
  native?.remove();
  const nanoseconds = medianOf(here);
  report('day_steps_per_s', 1e9 / nanoseconds, 'steps/s', { years: YEARS, nanosecondsPerStep: nanoseconds });
  if (inC.length > 0) {
    report('day_steps_per_s_c_o3', 1e9 / medianOf(inC), 'steps/s');
    report('day_steps_to_c', nanoseconds / medianOf(inC), 'times the time of C');
  }
}

/** The same loop in C, where there is a compiler. */
function compiled(): { program: string; remove: () => void } | null {
  const folder = mkdtempSync(join(tmpdir(), 'drywake-bench-'));
  const remove = () => rmSync(folder, { recursive: true, force: true });
  const program = join(folder, 'daySteps');
  const source = fileURLToPath(new URL('daySteps.c', import.meta.url));
  try {
    execFileSync('gcc', ['-O3', '-march=native', source, '-o', program, '-lm'], { stdio: 'ignore' });
    return { program, remove };
  } catch {
    remove();
    return null;
  }
}

function inputOf({ days, rainMm, maxTempC, minTempC }: ReturnType<typeof prepareSeries>): Buffer {
  const { tewMm, rewMm, wetEvaporationCoefficient } = layer;
  const { q10, moistureExponent, snowStopsMm } = RESPONSE;
  const parameters = [tewMm, rewMm, wetEvaporationCoefficient, q10, moistureExponent, MELT, snowStopsMm];
  const columns = [[days], rainMm, maxTempC, minTempC, radiationTable(LATITUDE), parameters];
  return Buffer.concat(columns.map((column) => Buffer.from(Float64Array.from(column).buffer)));
}
