import { InvalidInputError } from '../errors.ts';
import { type Backup, backupSchema, type RestoreResult } from '../schema/backup.ts';
import type { Everything } from '../store/everything.ts';
import type { FieldsStore } from '../store/fieldsStore.ts';
import { parseJson } from './boundedJson.ts';
import { faultsOf } from './schemaRefusal.ts';

/** What backups are made from and put back into. */
export interface BackupDeps {
  readonly store: Pick<FieldsStore, 'everything' | 'replaceEverything'>;
  readonly version: string;
  now(): string;
  /** Writes a text into a new file of the data folder and gives its name. */
  keepFile(name: string, text: string): Promise<string>;
}

/** Everything that is kept, as one document. */
export const makeBackup = async ({ store, version, now }: BackupDeps): Promise<Backup> => ({
  format: 'drywake-backup',
  formatVersion: 1,
  madeAt: now(),
  program: version,
  ...(await store.everything()),
});

/** Puts a backup in the place of all that is kept; what was there is written into the data folder first. */
export async function restoreBackup(backup: Backup, deps: BackupDeps): Promise<RestoreResult> {
  const { fields, labels, lastAnswers } = backup;
  assertWhole({ fields, labels, lastAnswers });
  const before = await makeBackup(deps);
  const isEmpty = before.fields.length + before.labels.length === 0;
  const stamp = before.madeAt.replaceAll(/[^0-9TZ]/g, '');
  const keptAs = isEmpty
    ? null
    : await deps.keepFile(`fields-before-restore-${stamp}.json`, `${JSON.stringify(before)}\n`);
  await deps.store.replaceEverything({ fields, labels, lastAnswers });
  const countOf = (versions: readonly { readonly id: string }[]) =>
    new Set(versions.map(({ id }) => id)).size;
  return { fields: countOf(fields), labels: countOf(labels), keptAs };
}

/**
 * A backup from the text of its file.
 * @throws {InvalidInputError} BACKUP_UNREADABLE
 */
export function readBackup(text: string): Backup {
  let given: unknown;
  try {
    given = parseJson(text);
  } catch (cause) {
    throw unreadable(`it is not JSON: ${(cause as Error).message}`);
  }
  const result = backupSchema.safeParse(given);
  if (result.success) return result.data;
  const [{ message }] = faultsOf(result.error.issues, given);
  throw unreadable(message.replace(/\.$/, ''));
}

/** Refuses a backup that holds a version twice or under another record's id. */
function assertWhole({ fields, labels }: Everything): void {
  for (const [part, versions] of Object.entries({ fields, labels })) {
    const seen = new Set<string>();
    for (const { id, version, document } of versions) {
      const key = `${id} ${version}`;
      if (seen.has(key)) throw unreadable(`${part}: version ${version} of "${id}" stands twice`);
      if (document.id !== id) throw unreadable(`${part}: "${document.id}" stands under the id "${id}"`);
      seen.add(key);
    }
  }
}

const unreadable = (fault: string): InvalidInputError =>
  new InvalidInputError('BACKUP_UNREADABLE', `The backup cannot be used; ${fault}.`, {
    hint: 'Give a file that “drywake fields backup” or the page has written, as it is. Nothing was changed.',
    details: { field: 'backup' },
  });
