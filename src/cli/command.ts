import type { Command as Program } from 'commander';
import type { AnswerDeps } from '../app/answerField.ts';
import type { FetchDeps } from '../app/fetchWeather.ts';
import type { FieldsDesk } from '../app/fieldsDesk.ts';
import type { FlatColumn } from '../app/flatTable.ts';
import type { ImportInput, ImportTarget, StoreUpkeep } from '../app/importWeather.ts';
import type { WeatherReader } from '../app/weatherReader.ts';
import type { Workshop } from '../app/workshop.ts';
import type { ServeOptions } from '../http/serve.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { FieldRecord } from '../schema/fieldRecord.ts';
import type { County } from '../schema/place.ts';
import type { ReadOptions } from '../schema/readOptions.ts';
import type { WeatherExport } from '../schema/weatherExport.ts';

/** What a command writes to and knows of the terminal. */
export interface Terminal {
  /** Results only. */
  out(text: string): void;
  /** Talk and progress. */
  err(text: string): void;
  /** Whether progress may be drawn: the error stream is a terminal. */
  readonly interactive: boolean;
  /** Whether colour is wanted: the output is a terminal and NO_COLOR is not set. */
  readonly colour: boolean;
}

/** Something that must be closed when the command ends. */
interface Closing {
  close(): Promise<void>;
}

/** The outside world as commands see it; `main` builds the real one, tests their own. */
export interface CliDeps {
  readonly terminal: Terminal;
  readonly version: string;
  /** Text of a file that the user named. */
  readText(path: string): Promise<string>;
  /** Writes a text into a new file that the user named; one that is there already is refused. */
  writeNewText(path: string, text: string): Promise<void>;
  /** Records straight from files and folders. */
  fileReader(paths: readonly string[], options?: ReadOptions): WeatherReader;
  /** The store, where there is one, then the embedded demo. */
  storedReader(): Promise<WeatherReader>;
  /** The store, held for writing; the database may read these files, beside those of the data folder. */
  importStore(files?: readonly string[]): Promise<ImportTarget & StoreUpkeep & Closing>;
  /** Weather files that the user named. */
  weatherFiles(paths: readonly string[], options?: ReadOptions): Promise<ImportInput>;
  /** The real records that come with the program. */
  exampleRecords(): Promise<ImportInput>;
  /** A client of the public records service, which sends nothing until it is asked to. */
  recordsService(options: { address?: string; mostBytes?: number }): Promise<FetchDeps['service']>;
  /** Runs work whose signal the first Ctrl-C gives; the second ends the program at once. */
  untilInterrupted<T>(work: (signal: AbortSignal) => Promise<T>): Promise<T>;
  /** Time for progress and rates. [ms] */
  now(): number;
  /** The moment, ISO 8601 in UTC: for what says when it was made. */
  clock(): string;
  /** Opens worker threads; one for each processor where no number is given. */
  workshop(workers?: number): Promise<Workshop>;
  /** Writes a file that the user named, whole or not at all. @throws {SourceFailedError} FILE_NOT_WRITTEN */
  writeText(path: string, text: string | Iterable<string>): Promise<void>;
  /** Writes rows as one Parquet file. @throws {SourceFailedError} FILE_NOT_WRITTEN */
  writeParquet(
    path: string,
    columns: readonly Pick<FlatColumn<unknown>, 'name' | 'type'>[],
    rows: Iterable<readonly unknown[]>,
  ): Promise<void>;
  /** Writes a stored station's days as Parquet, partitioned by station. */
  exportWeather(folder: string, stationIds?: readonly string[]): Promise<WeatherExport>;
  /** Tells the US state that a place lies in. */
  stateOf(): Promise<(latitudeDeg: number, longitudeDeg: number) => string | null>;
  /** All US counties with the middle of their areas. */
  counties(): Promise<readonly County[]>;
  /** The catalogue of actives, crops and intervals. */
  catalogue(): Catalogue;
  /** What answering needs, over a reader. */
  answerDeps(weather: WeatherReader): AnswerDeps;
  /** The user's fields; none where none was ever kept. */
  keptFields(): Promise<readonly FieldRecord[]>;
  /** Does work on the user's fields: with their file itself, or by asking the server that holds it. */
  withDesk<T>(work: (desk: FieldsDesk) => Promise<T>): Promise<T>;
  /** Runs the server until it is told to stop. */
  serve(options: ServeOptions & { readonly logRequests?: boolean }): Promise<void>;
}

/** A command: its words, and how it adds itself to the program. Loaded only when it is called for. */
export interface CommandSpec {
  /** First word on the command line. */
  readonly name: string;
  readonly summary: string;
  load(): Promise<{ define(program: Program, deps: CliDeps): void }>;
}
