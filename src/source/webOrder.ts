import { csvFields } from './csvLine.ts';
import { CsvTable } from './csvTable.ts';
import type { RecordLayout } from './recordLayout.ts';
import { wideColumns } from './wideColumns.ts';
import { readWideTable } from './wideTable.ts';

/** CSV as ordered on the public service's web page: STATION, DATE and a column for each element, in units not named. */
export const webOrder: RecordLayout = {
  name: 'web-order CSV (STATION, DATE and element columns)',

  recognises: ([firstLine]) => wideColumns(csvFields(firstLine, ',') ?? []) !== null,

  read(bytes, fileName, builder, request): void {
    const table = new CsvTable(bytes, fileName);
    const columns = wideColumns(table.header);
    if (columns !== null) readWideTable(table, columns, fileName, builder, request);
  },
};
