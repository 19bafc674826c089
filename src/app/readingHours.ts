import { isoDateOf } from '../calendar.ts';
import { ABSENT } from '../schema/codes.ts';
import type { StationCheck } from '../schema/stationCheck.ts';
import type { StationRecord } from '../schema/weather.ts';

/** Readings in a row at another hour that make a change of hour; fewer are taken for exceptions. */
const LASTING_READINGS = 30;

type Hours = StationCheck['changes']['observationTime'];

/**
 * At what time of day a station's rain was read, period by period. Days whose record does not say it neither begin nor
 * end a period; fewer than 30 readings in a row at another hour are counted as exceptions.
 */
export function readingHours({ rainTimeHhmm, rainTenthsMm, firstDay }: StationRecord): Hours {
  const rainDays = rainTenthsMm.reduce((count, rain) => count + (rain === ABSENT ? 0 : 1), 0);
  const runs = runsOf(rainTimeHhmm ?? new Int32Array());
  const knownDays = runs.reduce((sum, { readings }) => sum + readings, 0);
  const periods: Run[] = [];
  let exceptions = 0;
  for (const run of runs) {
    const last = periods.at(-1);
    if (last?.time === run.time) {
      last.to = run.to;
      last.readings += run.readings;
    } else if (run.readings >= LASTING_READINGS) periods.push({ ...run });
    else exceptions += run.readings;
  }
  return {
    knownDays,
    unknownDays: rainDays - knownDays,
    exceptions,
    periods: periods.map(({ time, from, to, readings }) => ({
      time: `${String(Math.floor(time / 100)).padStart(2, '0')}:${String(time % 100).padStart(2, '0')}`,
      firstDate: isoDateOf(firstDay + from),
      lastDate: isoDateOf(firstDay + to),
      readings,
    })),
  };
}

interface Run {
  readonly time: number;
  readonly from: number;
  to: number;
  readings: number;
}

/** Known times in a row that are alike; days without a known time lie within or between runs. */
function runsOf(times: Int32Array): Run[] {
  const runs: Run[] = [];
  for (let day = 0; day < times.length; day++) {
    if (times[day] === ABSENT) continue;
    const last = runs.at(-1);
    if (last?.time === times[day]) {
      last.to = day;
      last.readings++;
    } else runs.push({ time: times[day], from: day, to: day, readings: 1 });
  }
  return runs;
}
