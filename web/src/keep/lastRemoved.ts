import type { Removed } from '../api/contract.ts';
import type { ShelfPath } from './shelf.ts';

let last: { readonly shelf: ShelfPath; readonly removed: Removed } | null = null;

/** Remembers what was just removed, for the list that is gone to next. */
export function tellRemoved(shelf: ShelfPath, removed: Removed): void {
  last = { shelf, removed };
}

/** What was just removed from a shelf; told once. */
export function takeLastRemoved(shelf: ShelfPath): Removed | null {
  const removed = last?.shelf === shelf ? last.removed : null;
  if (removed !== null) last = null;
  return removed;
}
