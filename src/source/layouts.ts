import { dailySummaries } from './dailySummaries.ts';
import { dly } from './dly.ts';
import { gaugeCsv } from './gaugeCsv.ts';
import { joinedCsv } from './joinedCsv.ts';
import type { RecordLayout } from './recordLayout.ts';
import { stationCsv } from './stationCsv.ts';
import { webOrder } from './webOrder.ts';

/** All layouts that can be read, in the order in which they are tried. */
export const LAYOUTS: readonly RecordLayout[] = [
  dly,
  stationCsv,
  joinedCsv,
  dailySummaries,
  webOrder,
  gaugeCsv,
];
