import { DrywakeError } from '../../errors.ts';
import type { TableImport } from '../../schema/tableImport.ts';
import type { Shelf } from '../../store/shelf.ts';
import { readTable } from './readTable.ts';
import type { TableShape } from './tableShape.ts';

/**
 * Keeps the records of a CSV table, each as a change of its own that can be undone; what is at fault is told and stops
 * nothing else.
 * @throws {InvalidInputError} TABLE_UNREADABLE where the text is no such table at all
 */
export async function importTable<T extends { readonly id: string }>(
  text: string,
  shape: TableShape<T>,
  shelf: Shelf<T>,
): Promise<TableImport> {
  const kept = new Map((await shelf.list()).kept.map((one) => [one.record.id, one]));
  const before = new Map([...kept].map(([id, { record }]) => [id, record]));
  const { records, faults } = readTable(text, shape, before);
  const result: TableImport = { saved: [], unchanged: [], faults };
  for (const { line, record } of records) {
    const version = kept.get(record.id)?.version ?? null;
    try {
      const put = await shelf.put(record, version);
      if (put.version === version) result.unchanged.push(record.id);
      else result.saved.push({ id: record.id, version: put.version, isNew: version === null });
    } catch (error) {
      if (!(error instanceof DrywakeError)) throw error;
      result.faults.push({ line, column: null, message: error.message });
    }
  }
  return result;
}
