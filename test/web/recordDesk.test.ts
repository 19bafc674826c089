import { beforeEach, describe, expect, it, vi } from 'vitest';
import { RecordDesk } from '../../web/src/keep/RecordDesk.ts';

interface Note {
  readonly id: string;
  readonly note: string;
}

/** What a page keeps texts in. */
function storage(): Storage {
  const texts: Record<string, string> = {};
  return Object.defineProperties(texts, {
    getItem: { value: (key: string) => texts[key] ?? null },
    setItem: { value: (key: string, text: string) => void Object.assign(texts, { [key]: text }) },
    removeItem: { value: (key: string) => void delete texts[key] },
  }) as unknown as Storage;
}

const keptAs = (version: number, note: string) => ({
  ...{ version, canUndo: version > 1, removed: false },
  record: { id: 'north', note },
});
const changed = (version: number, note: string) =>
  Response.json(
    { code: 'FIELD_CHANGED', message: 'Changed.', hint: '', details: { kept: keptAs(version, note) } },
    { status: 409 },
  );

/** A desk with the record of version 1, and a server that then answers each request in turn. */
async function deskBefore(...answers: readonly Response[]) {
  const left = [Response.json(keptAs(1, 'before')), ...answers];
  const asked = vi.fn(async (_path: string, _init?: RequestInit) => left.shift() ?? Response.error());
  vi.stubGlobal('fetch', asked);
  const desk = new RecordDesk<Note>('/api/fields', 'north', () => undefined);
  await desk.open();
  return { desk, asked };
}

beforeEach(() => {
  vi.stubGlobal('localStorage', storage());
  vi.stubGlobal('sessionStorage', storage());
  return () => vi.unstubAllGlobals();
});

describe('a record that the server keeps in another version than the page began from', () => {
  it('is kept where it says the same: it was sent from here and its answer was lost', async () => {
    const { desk, asked } = await deskBefore(changed(2, 'after'), Response.json(keptAs(3, 'later')));
    desk.change({ note: 'after' });
    await expect.poll(() => desk.state.sending).toBe(false);
    expect(desk.state).toMatchObject({ kept: { version: 2 }, theirs: null, record: { note: 'after' } });
    expect(Object.keys(localStorage)).toEqual([]);
    desk.change({ note: 'later' });
    await expect.poll(() => desk.state.kept?.version).toBe(3);
    expect(asked.mock.lastCall?.[1]?.headers).toMatchObject({ 'if-match': '"2"' });
  });

  it('stands beside that of the page where they differ, and neither is overwritten', async () => {
    const { desk } = await deskBefore(changed(2, 'theirs'));
    desk.change({ note: 'after' });
    await expect.poll(() => desk.state.sending).toBe(false);
    expect(desk.state).toMatchObject({
      ...{ kept: { version: 1 }, record: { note: 'after' } },
      theirs: { version: 2, record: { note: 'theirs' } },
    });
    expect(Object.keys(localStorage)).toHaveLength(1);
  });
});
