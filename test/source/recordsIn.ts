import type { ReadOptions } from '../../src/schema/readOptions.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { tempFile } from '../tempFolder.ts';

/** The records in a file of that content, as an import reads them. */
export async function recordsIn(
  content: string | Buffer,
  options: ReadOptions = {},
  name = 'file.csv',
): Promise<StationRecord[]> {
  const { files } = await findRecordFiles([tempFile(name, content)], options);
  return files[0].records();
}

/** The one record in it. */
export async function recordIn(
  content: string | Buffer,
  options: ReadOptions = {},
  name = 'file.csv',
): Promise<StationRecord> {
  const records = await recordsIn(content, options, name);
  if (records.length !== 1) throw new Error(`expected one record, found ${records.length}`);
  return records[0];
}
