/** Texts typed into blanks that could not be read yet, kept over a reload for the same question. */
const STORE_KEY = 'drywake-typed';

type Typed = Record<string, string>;

/** Texts kept for an address. */
export function keptDrafts(address: string): Typed {
  try {
    const kept = JSON.parse(localStorage.getItem(STORE_KEY) ?? '{}') as { address?: string; typed?: Typed };
    return kept.address === address ? (kept.typed ?? {}) : {};
  } catch {
    return {};
  }
}

/** Keeps texts for an address; private windows may refuse, and then nothing is kept. */
export function keepDrafts(address: string, typed: Typed): void {
  try {
    if (Object.keys(typed).length === 0) localStorage.removeItem(STORE_KEY);
    else localStorage.setItem(STORE_KEY, JSON.stringify({ address, typed }));
  } catch {
    // Storage is full or forbidden: the page works without it.
  }
}
