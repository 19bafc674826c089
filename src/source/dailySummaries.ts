import { csvFields } from './csvLine.ts';
import { CsvTable } from './csvTable.ts';
import type { RecordLayout } from './recordLayout.ts';
import { wideColumns } from './wideColumns.ts';
import { readWideTable } from './wideTable.ts';

const columnsOf = (header: readonly string[]) => {
  const columns = wideColumns(header);
  return columns?.values.some(({ flagsAt }) => flagsAt?.length === 1) ? columns : null;
};

/**
 * The access service's daily summaries: a line for each day, and beside each element's column one of its flags, named
 * `PRCP_ATTRIBUTES` and so on. Columns in any case and order; others may stand among them.
 */
export const dailySummaries: RecordLayout = {
  name: 'daily-summaries CSV with attribute columns',

  recognises: ([firstLine]) => columnsOf(csvFields(firstLine, ',') ?? []) !== null,

  read(bytes, fileName, builder, request): void {
    const table = new CsvTable(bytes, fileName);
    const columns = columnsOf(table.header);
    if (columns !== null) readWideTable(table, columns, fileName, builder, request);
  },
};
