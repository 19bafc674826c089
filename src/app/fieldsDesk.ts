import type { MissingDataError } from '../errors.ts';
import type { Backup, RestoreResult } from '../schema/backup.ts';
import type { FieldAnswer, Refresh } from '../schema/fieldAnswer.ts';
import type { FieldRecord } from '../schema/fieldRecord.ts';
import type { LabelEntry } from '../schema/labelEntry.ts';
import type { ApplicationRecord } from '../schema/restrictedUse.ts';
import type { Sheet } from '../schema/sheet.ts';
import type { Wording } from '../schema/wording.ts';
import type { FieldsStore } from '../store/fieldsStore.ts';
import type { Kept, Shelf } from '../store/shelf.ts';
import { applicationRecord } from './applicationRecord.ts';
import { fieldAnswers } from './fieldAnswers.ts';
import { fieldSheet } from './fieldSheet.ts';
import { labelBookOf } from './labelBook.ts';
import { recordUnknown } from './recordUnknown.ts';
import { type RefreshDeps, refreshFields } from './refreshFields.ts';
import { type BackupDeps, makeBackup, restoreBackup } from './restoreBackup.ts';
import { sayIn } from './say.ts';

export type { FieldsStore, Kept, Shelf };

/** All that can be done with fields and label entries: over the store itself, or by asking the server that holds it. */
export interface FieldsDesk {
  readonly fields: Shelf<FieldRecord>;
  readonly labels: Shelf<LabelEntry>;
  /** One answer for each planned crop. @throws {MissingDataError} FIELD_UNKNOWN */
  answers(fieldId: string, wording?: Wording): Promise<FieldAnswer[]>;
  /** @throws {MissingDataError} FIELD_UNKNOWN, TREATMENT_UNKNOWN */
  applicationRecord(fieldId: string, treatmentId: string, wording?: Wording): Promise<ApplicationRecord>;
  /** The page for the grower, of one planned crop. @throws {MissingDataError} FIELD_UNKNOWN, PLAN_UNKNOWN */
  sheet(fieldId: string, planId: string | null, wording?: Wording): Promise<Sheet>;
  refresh(fetchNewer: boolean, wording?: Wording): Promise<Refresh>;
  backup(): Promise<Backup>;
  /** @throws {InvalidInputError} BACKUP_UNREADABLE */
  restore(backup: Backup): Promise<RestoreResult>;
}

/** What a desk over the store itself needs. */
export interface DeskDeps extends RefreshDeps, BackupDeps {
  readonly store: FieldsStore;
}

/** The refusal of a field that is not there. */
export const fieldUnknown = (id: string, all: readonly Kept<FieldRecord>[]): MissingDataError =>
  recordUnknown(
    { code: 'FIELD_UNKNOWN', noun: 'field', listed: 'The list of fields shows each with its id.' },
    id,
    all.map(({ record }) => record.id),
  );

/** A desk over the store itself. */
export function createFieldsDesk(deps: DeskDeps): FieldsDesk {
  const { store, weather } = deps;
  const book = labelBookOf(store.labels);
  const answer = (wording?: Wording) => ({ ...deps.answer, wording });
  const kept = async (id: string): Promise<FieldRecord> => {
    const found = await store.fields.get(id);
    if (found !== null) return found.record;
    throw fieldUnknown(id, (await store.fields.list()).kept);
  };
  return {
    fields: store.fields,
    labels: store.labels,
    answers: async (fieldId, wording) =>
      fieldAnswers(await kept(fieldId), await weather.stations(), answer(wording)),
    sheet: async (fieldId, planId, wording) =>
      fieldSheet(await kept(fieldId), planId, await weather.stations(), answer(wording)),
    async applicationRecord(fieldId, treatmentId, wording) {
      const record = await kept(fieldId);
      const named = record.treatments.find(({ id }) => id === treatmentId)?.labelEntry;
      const entry = named === undefined ? null : await book.label(named);
      return applicationRecord(record, treatmentId, entry?.entry ?? null, sayIn(wording));
    },
    refresh: (fetchNewer, wording) => refreshFields(fetchNewer, { ...deps, answer: answer(wording) }),
    backup: () => makeBackup(deps),
    restore: (backup) => restoreBackup(backup, deps),
  };
}
