import { CsvError, parse } from 'csv-parse/sync';
import { InvalidInputError } from '../errors.ts';
import { TEXTURE_CLASSES, type TextureClass } from '../schema/soil.ts';

/**
 * Reads which soil each station stands for: CSV with the columns station and soil_class.
 * @throws {InvalidInputError} FILE_UNREADABLE
 */
export function soilsByStation(text: string, file: string): Record<string, TextureClass> {
  const hint = `Write the head "station,soil_class" and one row for each station; classes: ${TEXTURE_CLASSES.join(', ')}.`;
  const refuse = (what: string, cause?: unknown) =>
    new InvalidInputError('FILE_UNREADABLE', `${file}: ${what}.`, {
      hint,
      cause,
      details: { field: 'soilByStation' },
    });
  let rows: Record<string, string>[];
  try {
    rows = parse(text, { bom: true, columns: true, trim: true, skip_empty_lines: true });
  } catch (cause) {
    if (cause instanceof CsvError) throw refuse(cause.message, cause);
    throw cause;
  }
  return Object.fromEntries(
    rows.map(({ station, soil_class: written }, index) => {
      const soil = TEXTURE_CLASSES.find((one) => one === written?.toLowerCase());
      if (!station || soil === undefined) {
        throw refuse(`row ${index + 1} names ${station ? `the soil "${written ?? ''}"` : 'no station'}`);
      }
      return [station, soil];
    }),
  );
}
