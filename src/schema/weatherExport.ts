import { z } from 'zod';

/** What an export of stored days has written. */
export const weatherExportSchema = z
  .strictObject({
    folder: z.string(),
    stations: z.int(),
    days: z.int().meta({ description: 'Days with any value', unit: 'd' }),
    files: z.string().meta({ description: 'Pattern that finds all of its files' }),
    query: z.string().meta({ description: 'A DuckDB query that reads one station back' }),
  })
  .meta({ id: 'WeatherExport' });
export type WeatherExport = z.infer<typeof weatherExportSchema>;
