import type { Removed } from '../api/contract.ts';
import { RefusedError, requestJson } from '../api/requestJson.ts';

/** A record as the server keeps it. */
export interface Kept<T> {
  readonly version: number;
  readonly record: T;
  readonly canUndo: boolean;
  readonly removed: boolean;
}

type Sent<T> = Omit<Kept<T>, 'record'> & { readonly record?: T; readonly entry?: T };

/** Where records of one kind are kept on the server. */
export type ShelfPath = '/api/fields' | '/api/labels';

const JSON_HEADERS = { 'content-type': 'application/json' };
const at = (shelf: ShelfPath, id: string): string => `${shelf}/${encodeURIComponent(id)}`;

/** Label entries come under another name; here all are records. */
function keptOf<T>({ record, entry, ...rest }: Sent<T>): Kept<T> {
  return { ...rest, record: (record ?? entry) as T };
}

export const fetchRecord = async <T>(shelf: ShelfPath, id: string): Promise<Kept<T>> =>
  keptOf(await requestJson<Sent<T>>(at(shelf, id)));

/** @param version the version that it takes the place of; null for a new record */
export async function putRecord<T extends { readonly id: string }>(
  shelf: ShelfPath,
  record: T,
  version: number | null,
): Promise<Kept<T>> {
  const condition: Record<string, string> =
    version === null ? { 'if-none-match': '*' } : { 'if-match': `"${version}"` };
  return keptOf(
    await requestJson<Sent<T>>(at(shelf, record.id), {
      method: 'PUT',
      headers: { ...JSON_HEADERS, ...condition },
      body: JSON.stringify(record),
    }),
  );
}

export const removeRecord = (shelf: ShelfPath, id: string, version: number): Promise<Removed> =>
  requestJson<Removed>(at(shelf, id), { method: 'DELETE', headers: { 'if-match': `"${version}"` } });

export const undoRecord = async <T>(shelf: ShelfPath, id: string, version: number): Promise<Kept<T>> =>
  keptOf(
    await requestJson<Sent<T>>(`${at(shelf, id)}/undo`, {
      method: 'POST',
      headers: JSON_HEADERS,
      body: JSON.stringify({ version }),
    }),
  );

/** What is kept now, where a refusal says that it has changed meanwhile. */
export function keptInRefusal<T>(error: unknown): Kept<T> | null {
  if (!(error instanceof RefusedError) || !error.problem.code.endsWith('_CHANGED')) return null;
  const { kept } = error.problem.details;
  return typeof kept === 'object' && kept !== null ? keptOf(kept as Sent<T>) : null;
}
