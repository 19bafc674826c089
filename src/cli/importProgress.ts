import type { ImportedFile } from '../schema/importSummary.ts';
import { sayTime } from './fetchProgress.ts';

/** How far an import has come. */
export interface ImportState {
  /** The file in hand. */
  readonly source: string;
  /** Files dealt with before it, and files in all. */
  readonly done: number;
  readonly total: number;
  /** Share of the file in hand that is done (0-1). */
  readonly fractionDone: number;
  /** Time since the start, and since the file in hand was begun. [ms] */
  readonly elapsedMs: number;
  readonly fileMs: number;
}

/** Below this share of a file no time is foretold from it. */
const TOO_LITTLE = 0.05;

/** One line: the file in hand, how much of it is done, files a minute, and the time that the rest may take. */
export function importProgressText(state: ImportState): string {
  const { source, done, total, fractionDone, elapsedMs, fileMs } = state;
  const parts = [`[${done + 1}/${total}] ${source}: ${Math.round(fractionDone * 100)} %`];
  if (done > 0) parts.push(`${((done + fractionDone) / (elapsedMs / 60_000)).toPrecision(2)} files a minute`);
  const leftMs =
    done > 0
      ? (elapsedMs / (done + fractionDone)) * (total - done - fractionDone)
      : (fileMs / fractionDone) * (total - fractionDone);
  if (done > 0 || fractionDone >= TOO_LITTLE) parts.push(`about ${sayTime(leftMs)} left`);
  return parts.join(', ');
}

/** One line on what became of a file. */
export function fileLine({ source, outcome, stations, problem }: ImportedFile): string {
  if (problem)
    return `${source}: ${outcome === 'passed-over' ? 'passed over. ' : ''}${problem.message} ${problem.hint}`;
  if (outcome === 'unchanged') return `${source}: unchanged since it was imported; --again reads it again`;
  const sum = (count: 'inserted' | 'replaced' | 'dropped') =>
    stations.reduce((total, station) => total + station[count], 0);
  const [first] = stations;
  const who =
    stations.length === 1
      ? `${first.stationId}, ${first.firstDate} to ${first.lastDate}`
      : `${stations.length} stations`;
  const notes = new Set(stations.flatMap((station) => station.notes));
  const told = [...notes].map((note) => `\n    ${note.replace(`${source}: `, '')}`).join('');
  return `${source}: ${who}; ${sum('inserted')} values new, ${sum('replaced')} replaced, ${sum('dropped')} dropped by flag or as impossible${told}`;
}
