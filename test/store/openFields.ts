import { onTestFinished } from 'vitest';
import { type FieldsStore, openFieldsStore } from '../../src/store/fieldsStore.ts';
import { tempFolder } from '../tempFolder.ts';

/** A clock that goes on by a second with every look at it. */
export function tickingClock(start = '2026-11-25T12:00:00.000Z'): () => string {
  let ms = Date.parse(start);
  return () => {
    ms += 1000;
    return new Date(ms).toISOString();
  };
}

/** An open store of fields that is closed when the running test ends. */
export async function openFields(folder = tempFolder()): Promise<FieldsStore> {
  const store = await openFieldsStore(folder, { now: tickingClock() });
  onTestFinished(() => store.close());
  return store;
}
