/** Changes that the server has not taken yet, kept in the browser: one for each record and window. */
export interface Draft<T> {
  /** Version that the changes began from; null for a record that is not kept yet. */
  readonly version: number | null;
  /** The record as changed; null where only texts that cannot be read wait. */
  readonly record: T | null;
  /** Texts that could not be read, by field. */
  readonly typed: Readonly<Record<string, string>>;
}

const PREFIX = 'drywake-draft:';
const WINDOW_KEY = 'drywake-window';

let windowName: string | null = null;

/** Tells this window from others that have the same record open; the same after a reload. */
function thisWindow(): string {
  if (windowName !== null) return windowName;
  windowName = sessionStorage.getItem(WINDOW_KEY) ?? Math.random().toString(36).slice(2);
  sessionStorage.setItem(WINDOW_KEY, windowName);
  return windowName;
}

const keyOf = (path: string): string => `${PREFIX}${path}#${thisWindow()}`;

/** Keeps what a window has changed; private windows may refuse, and then it lives as long as the page. */
export function keepDraft<T>(path: string, draft: Draft<T>): void {
  try {
    localStorage.setItem(keyOf(path), JSON.stringify(draft));
  } catch {
    // Storage is full or forbidden.
  }
}

export function dropDraft(path: string): void {
  try {
    localStorage.removeItem(keyOf(path));
  } catch {
    // There is no storage, so there is no draft.
  }
}

/** This window's draft of a record; else one that a window closed meanwhile has left, which moves to this one. */
export function keptDraft<T>(path: string): Draft<T> | null {
  try {
    const own = keyOf(path);
    const left = Object.keys(localStorage).find((key) => key.startsWith(`${PREFIX}${path}#`));
    const text = localStorage.getItem(own) ?? (left === undefined ? null : localStorage.getItem(left));
    if (text === null) return null;
    const draft = JSON.parse(text) as Draft<T>;
    if (left !== undefined && localStorage.getItem(own) === null) {
      localStorage.setItem(own, text);
      localStorage.removeItem(left);
    }
    return draft;
  } catch {
    return null;
  }
}
