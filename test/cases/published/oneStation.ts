import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { createFileReader, type StationRecord } from '../../../src/index.ts';

/** The record of one station out of a large packed file whose lines are grouped by station; the rest is not parsed. */
export async function recordOutOf(packedFile: string, station: string): Promise<StationRecord> {
  const bytes = gunzipSync(readFileSync(packedFile));
  const first = bytes.indexOf(`\n${station},`) + 1;
  const end = bytes.indexOf('\n', bytes.lastIndexOf(`\n${station},`) + 1) + 1;
  const folder = mkdtempSync(join(tmpdir(), 'drywake-test-'));
  try {
    const file = join(folder, `${station}.csv`);
    writeFileSync(file, bytes.subarray(first, end));
    return await createFileReader([file]).record(station);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
