import type { ModelUsed } from '../schema/modelUsed.ts';
import type { FlatColumn } from './flatTable.ts';

/**
 * The last columns of a table of answers: what was asked, and by which version. They stand on every row, so that a row
 * keeps them when it is sorted, filtered or put under those of another table.
 * @param asked what was asked of all rows; null where each row says all of it
 */
export const madeColumns = <Row>(asked: string | null, { name, version }: ModelUsed): FlatColumn<Row>[] => [
  { name: 'asked', type: 'text', cell: () => asked },
  { name: 'model', type: 'text', cell: () => `${name} ${version}` },
];
