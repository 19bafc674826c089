import { requestJson } from './requestJson.ts';

const early = new Map<string, Promise<unknown>>();

/** Fetches what a place will need while its code is still on its way. */
export function askEarly(paths: readonly string[]): void {
  for (const path of paths) {
    const answer = requestJson(path);
    answer.catch(() => undefined);
    early.set(path, answer);
  }
}

/** What was fetched early, once; else fetches it now. */
export function takeEarly<T>(path: string): Promise<T> {
  const answer = early.get(path) as Promise<T> | undefined;
  early.delete(path);
  return answer ?? requestJson<T>(path);
}
