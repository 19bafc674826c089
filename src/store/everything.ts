import type { DuckDBConnection } from '@duckdb/node-api';
import type { Backup } from '../schema/backup.ts';
import { lastAnswerSchema } from '../schema/fieldAnswer.ts';
import { readDocument, type ShelfKind } from './shelf.ts';
import { FIELDS, LABELS } from './shelfKinds.ts';

/** All that the store of fields holds. */
export type Everything = Pick<Backup, 'fields' | 'labels' | 'lastAnswers'>;
export type LastAnswers = Backup['lastAnswers'];

type Versions<T> = { id: string; version: number; removed: boolean; changedAt: string; document: T }[];

const ANSWERS = { code: 'ANSWER', noun: 'answer', schema: lastAnswerSchema };

/** Every version of every record, and the last answers. */
export async function readEverything(connection: DuckDBConnection): Promise<Everything> {
  return {
    fields: await readVersions(connection, FIELDS),
    labels: await readVersions(connection, LABELS),
    lastAnswers: await readLastAnswers(connection),
  };
}

/** Puts all that in the place of what is there; to be run in a transaction. */
export async function writeEverything(connection: DuckDBConnection, all: Everything): Promise<void> {
  for (const [{ table }, versions] of [[FIELDS, all.fields] as const, [LABELS, all.labels] as const]) {
    await connection.run(`DELETE FROM ${table}_history`);
    for (const { id, version, removed, changedAt, document } of versions) {
      await connection.run(`INSERT INTO ${table}_history VALUES ($1, $2, $3, $4, $5)`, [
        ...[id, version, JSON.stringify(document), removed, changedAt],
      ]);
    }
    // Deleting a row and inserting its key again in one transaction would break the key; hence in three steps.
    const newest = `SELECT id, max(version) AS version, arg_max(document, version) AS document,
      arg_max(removed, version) AS removed FROM ${table}_history GROUP BY id`;
    await connection.run(`DELETE FROM ${table} WHERE id NOT IN (SELECT id FROM ${table}_history)`);
    await connection.run(
      `UPDATE ${table} SET version = n.version, document = n.document, removed = n.removed
       FROM (${newest}) n WHERE ${table}.id = n.id`,
    );
    await connection.run(
      `INSERT INTO ${table} SELECT * FROM (${newest}) n WHERE n.id NOT IN (SELECT id FROM ${table})`,
    );
  }
  await writeLastAnswers(connection, all.lastAnswers);
}

async function readVersions<T extends { readonly id: string }>(
  connection: DuckDBConnection,
  kind: ShelfKind<T>,
): Promise<Versions<T>> {
  const found = await connection.runAndReadAll(
    `SELECT id, version, document, removed, changed_at FROM ${kind.table}_history ORDER BY id, version`,
  );
  return found.getRows().map(([id, version, document, removed, changedAt]) => ({
    id: id as string,
    version: version as number,
    removed: removed as boolean,
    changedAt: changedAt as string,
    document: readDocument(kind, id as string, document as string),
  }));
}

/** What each planned crop was last told. */
export async function readLastAnswers(connection: DuckDBConnection): Promise<LastAnswers> {
  const found = await connection.runAndReadAll(
    'SELECT field_id, plan_id, document FROM last_answer ORDER BY field_id, plan_id',
  );
  return found.getRows().map(([fieldId, planId, document]) => ({
    fieldId: fieldId as string,
    planId: planId as string,
    answer: readDocument(ANSWERS, `${fieldId} ${planId}`, document as string),
  }));
}

/** Puts answers in the place of those kept; to be run in a transaction. */
export async function writeLastAnswers(connection: DuckDBConnection, answers: LastAnswers): Promise<void> {
  await connection.run('DELETE FROM last_answer');
  for (const { fieldId, planId, answer } of answers) {
    await connection.run('INSERT INTO last_answer VALUES ($1, $2, $3)', [
      ...[fieldId, planId, JSON.stringify(answer)],
    ]);
  }
}
