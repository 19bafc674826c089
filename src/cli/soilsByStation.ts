import { meantOf } from '../app/meant.ts';
import { CsvFault, type CsvRow, csvRows } from '../app/tables/csvRows.ts';
import { InvalidInputError } from '../errors.ts';
import { TEXTURE_CLASSES, type TextureClass } from '../schema/soil.ts';

/**
 * Reads which soil each station stands for: CSV with the columns station and soil_class.
 * @throws {InvalidInputError} FILE_UNREADABLE
 */
export function soilsByStation(text: string, file: string): Record<string, TextureClass> {
  const hint = `Write the head "station,soil_class" and one row for each station; classes: ${TEXTURE_CLASSES.join(', ')}.`;
  const refuse = (what: string, cause?: unknown) =>
    new InvalidInputError('FILE_UNREADABLE', `${file}: ${what.replace(/([^?.])$/, '$1.')}`, {
      hint,
      cause,
      details: { field: 'soilByStation' },
    });
  let rows: CsvRow[];
  try {
    rows = csvRows(text, { trim: true, cells: 'the head’s' });
  } catch (cause) {
    if (cause instanceof CsvFault) throw refuse(`line ${cause.line}: ${cause.message}`, cause);
    throw cause;
  }
  const [head, ...stations] = rows;
  const [idAt, soilAt] = ['station', 'soil_class'].map((name) => head?.cells.indexOf(name) ?? -1);
  return Object.fromEntries(
    stations.map(({ cells, line }) => {
      const [station, written] = [cells[idAt], cells[soilAt]];
      const soil = TEXTURE_CLASSES.find((one) => one === written?.toLowerCase());
      if (!station || soil === undefined) {
        const meant = station ? meantOf(written ?? '', TEXTURE_CLASSES) : null;
        throw refuse(
          `line ${line} names ${station ? `the soil "${written ?? ''}"` : 'no station'}${meant === null ? '' : `. ${meant}`}`,
        );
      }
      return [station, soil];
    }),
  );
}
