import { dly } from './dly.ts';
import type { RecordLayout } from './recordLayout.ts';
import { stationCsv } from './stationCsv.ts';

/** All layouts that can be read, in the order in which they are tried. */
export const LAYOUTS: readonly RecordLayout[] = [dly, stationCsv];
