import type { Command as Program } from 'commander';
import { InvalidInputError } from '../../errors.ts';
import type { CliDeps } from '../command.ts';

interface ExportFlags {
  parquet?: string;
  station?: string[];
  json?: boolean;
}

/** `drywake weather export`: the stored days as open files, partitioned by station. */
export function defineExport(program: Program, deps: CliDeps): void {
  program
    .option('--parquet <folder>', 'new folder for the files: one folder a station, tenths as stored')
    .option('--station <ids...>', 'these stations only')
    .action(async ({ parquet, station, json }: ExportFlags) => {
      if (parquet === undefined) {
        throw new InvalidInputError('FOLDER_NOT_GIVEN', 'There is no folder to write to.', {
          hint: 'Name a new one: drywake weather export --parquet records-parquet',
        });
      }
      const written = await deps.exportWeather(parquet, station);
      const { stations, days, files, query } = written;
      deps.terminal.out(
        json
          ? `${JSON.stringify(written, null, 2)}\n`
          : `${stations} ${stations === 1 ? 'station' : 'stations'}, ${days} days: ${files}\nAny engine that reads Parquet can read them; in DuckDB:\n\n${query}\n`,
      );
    });
}
