import { describe, expect, it } from 'vitest';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { refusalOf } from '../refusal.ts';
import { tempFolder } from '../tempFolder.ts';
import { openFields } from './openFields.ts';

describe('a record of the store of fields', () => {
  it('comes back as it was put, also after the file was closed', async () => {
    const folder = tempFolder();
    const first = await openFields(folder);
    expect(await first.fields.put(fieldOf(), null)).toEqual({
      ...{ version: 1, record: fieldOf(), canUndo: false, removed: false },
    });
    await first.labels.put(labelOf(), null);
    await first.close();
    const again = await openFields(folder);
    expect((await again.fields.get('home-quarter'))?.record).toEqual(fieldOf());
    expect((await again.labels.list()).kept.map(({ record }) => record)).toEqual([labelOf()]);
  });

  it('keeps texts that look like SQL as texts', async () => {
    const store = await openFields();
    const name = "'; DROP TABLE field; -- “”";
    await store.fields.put(fieldOf({ name }), null);
    expect((await store.fields.list()).kept[0].record.name).toBe(name);
  });

  it('makes a version with every change, and none where nothing has changed', async () => {
    const { fields } = await openFields();
    await fields.put(fieldOf(), null);
    expect(await fields.put(fieldOf({ note: 'new' }), 1)).toMatchObject({ version: 2, canUndo: true });
    expect((await fields.put(fieldOf({ note: 'new' }), 2)).version).toBe(2);
  });

  it('refuses a change from another version, telling what is kept', async () => {
    const { fields } = await openFields();
    await fields.put(fieldOf(), null);
    await fields.put(fieldOf({ note: 'theirs' }), 1);
    const refusal = await refusalOf(fields.put(fieldOf({ note: 'mine' }), 1));
    expect(refusal.code).toBe('FIELD_CHANGED');
    expect(refusal.message).toBe(
      'The field “Larkrise (invented), Home quarter” was changed meanwhile: it is at version 2, and this change began from version 1.',
    );
    expect(refusal.details.kept).toEqual({
      ...{ version: 2, record: fieldOf({ note: 'theirs' }), canUndo: true, removed: false },
    });
    expect((await fields.get('home-quarter'))?.record.note).toBe('theirs');
    expect((await refusalOf(fields.put(fieldOf(), null))).code).toBe('FIELD_EXISTS');
    expect((await refusalOf(fields.put(fieldOf({ id: 'other' }), 3))).code).toBe('FIELD_UNKNOWN');
    expect((await refusalOf(fields.remove('home-quarter', 1))).code).toBe('FIELD_CHANGED');
  });

  it('undoes an edit, and the undoing', async () => {
    const { fields } = await openFields();
    await fields.put(fieldOf({ note: 'a' }), null);
    await fields.put(fieldOf({ note: 'b' }), 1);
    expect(await fields.undo('home-quarter', 2)).toMatchObject({ version: 3, record: { note: 'a' } });
    expect(await fields.undo('home-quarter', 3)).toMatchObject({ version: 4, record: { note: 'b' } });
    expect((await refusalOf(fields.undo('home-quarter', 3))).code).toBe('FIELD_CHANGED');
  });

  it('undoes a removal, and the undoing; the first version has nothing before it', async () => {
    const { fields } = await openFields();
    await fields.put(fieldOf(), null);
    expect((await refusalOf(fields.undo('home-quarter', 1))).code).toBe('FIELD_FIRST');
    expect(await fields.count()).toBe(1);
    expect(await fields.remove('home-quarter', 1)).toEqual({
      ...{ id: 'home-quarter', name: 'Larkrise (invented), Home quarter', version: 2 },
    });
    expect(await fields.count()).toBe(0);
    expect(await fields.get('home-quarter')).toBeNull();
    const list = await fields.list();
    expect(list.kept).toEqual([]);
    expect(list.removed).toEqual([
      { id: 'home-quarter', name: 'Larkrise (invented), Home quarter', version: 2 },
    ]);
    const late = await refusalOf(fields.put(fieldOf({ note: 'late' }), 1));
    expect(late.message).toContain('was removed meanwhile');
    expect(await fields.undo('home-quarter', 2)).toMatchObject({ version: 3, removed: false });
    expect((await fields.get('home-quarter'))?.record).toEqual(fieldOf());
    expect(await fields.undo('home-quarter', 3)).toMatchObject({ version: 4, removed: true });
    expect((await refusalOf(fields.remove('home-quarter', 4))).code).toBe('FIELD_UNKNOWN');
  });

  it('begins anew under the id of a removed one, which can still be brought back', async () => {
    const { fields } = await openFields();
    await fields.put(fieldOf({ note: 'old' }), null);
    await fields.remove('home-quarter', 1);
    expect(await fields.put(fieldOf({ note: 'new' }), null)).toMatchObject({ version: 3 });
    expect(await fields.undo('home-quarter', 3)).toMatchObject({ version: 4, removed: true });
  });
});

it('of fifty changes at once from each version exactly one is kept, and none of those is lost', async () => {
  const { fields, everything } = await openFields();
  await fields.put(fieldOf({ note: 'start' }), null);
  const winners: string[] = [];
  for (let version = 1; version <= 5; version++) {
    const tries = await Promise.allSettled(
      Array.from({ length: 50 }, (_, tab) => fields.put(fieldOf({ note: `${version}-${tab}` }), version)),
    );
    const won = tries.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
    const lost = tries.flatMap((one) => (one.status === 'rejected' ? [one.reason.code] : []));
    expect(won.map((one) => one.version)).toEqual([version + 1]);
    expect(lost).toEqual(Array.from({ length: 49 }, () => 'FIELD_CHANGED'));
    winners.push(won[0].record.note);
  }
  const history = (await everything()).fields;
  expect(history.map(({ version }) => version)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(history.map(({ document }) => document.note)).toEqual(['start', ...winners]);
});
