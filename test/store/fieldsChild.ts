import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';

// Writes one version after the other as a program of its own: fieldsChild.ts FOLDER says each version that was kept.
const [folder] = process.argv.slice(2);
const store = await openFieldsStore(folder, { now: () => '2026-11-25T12:00:00.000Z', waitMs: 5000 });
process.stdout.write('open\n');
let version = (await store.fields.get('home-quarter'))?.version ?? null;
for (;;) {
  const next = (version ?? 0) + 1;
  ({ version } = await store.fields.put(fieldOf({ note: `note ${next}` }), version));
  process.stdout.write(`${version}\n`);
}
