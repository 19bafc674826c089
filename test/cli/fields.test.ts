import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { backupSchema } from '../../src/schema/backup.ts';
import { refreshSchema } from '../../src/schema/fieldAnswer.ts';
import { fieldListSchema } from '../../src/schema/fieldRecord.ts';
import { labelListSchema } from '../../src/schema/labelEntry.ts';
import { applicationRecordSchema } from '../../src/schema/restrictedUse.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { tickingClock } from '../store/openFields.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';
import { serveDrywake } from './servedDrywake.ts';

/** A data folder with one field and one label entry. */
async function folderOfLarkrise(): Promise<string> {
  const folder = tempFolder();
  const store = await openFieldsStore(folder, { now: tickingClock() });
  await store.fields.put(fieldOf(), null);
  await store.labels.put(labelOf(), null);
  await store.close();
  return folder;
}

const TABLE =
  'farm,field,station,soil_ph\nAlderley,Creek,demo-invented,6.8\nAlderley,Hill,demo-invented,high\n';

describe.each([
  ['with the file itself', async () => undefined],
  ['by asking the running server', serveDrywake],
])('the commands of fields, %s', (_, serve) => {
  it('list, show, export, undo, refresh, record and back up', async () => {
    const folder = await folderOfLarkrise();
    await serve(folder);
    const json = async (...argv: string[]) => {
      const { code, out, err } = await runDrywake([...argv, '--json'], folder);
      expect([code, err]).toEqual([0, '']);
      return JSON.parse(out);
    };
    expect(fieldListSchema.parse(await json('fields', 'list')).fields[0].record).toEqual(fieldOf());
    const shown = await json('fields', 'show', 'home-quarter');
    expect(shown.answers.map(({ planId }: { planId: string }) => planId)).toEqual(['lentil', 'pea-grazed']);
    expect((await json('fields', 'export')).fields).toEqual([fieldOf()]);
    expect(labelListSchema.parse(await json('labels', 'list')).labels[0].entry).toEqual(labelOf());
    expect((await json('labels', 'show', 'shed-one')).entry).toEqual(labelOf());
    expect(refreshSchema.parse(await json('refresh')).answered).toBe(2);
    expect(applicationRecordSchema.parse(await json('fields', 'record', 'home-quarter')).treatmentId).toBe(
      'stubble',
    );

    const backup = backupSchema.parse(await json('fields', 'backup'));
    expect(backup.lastAnswers).toHaveLength(2);
    const table = await runDrywake(['fields', 'import', tempFile('fields.csv', TABLE)], folder);
    expect(table.code).toBe(2);
    expect(table.out).toBe('alderley-creek: new\nline 3, soil_ph: "high" is no number\n');
    expect(table.err).toContain('has 1 at fault');
    await runDrywake(
      ['fields', 'import', tempFile('one.csv', 'id,note\nalderley-creek,wet corner\n')],
      folder,
    );
    expect(await json('fields', 'undo', 'alderley-creek')).toMatchObject({
      version: 3,
      record: { note: '' },
    });

    const file = tempFile('backup.json', JSON.stringify(backup));
    expect((await runDrywake(['fields', 'restore', file], folder)).code).toBe(2);
    expect(await json('fields', 'restore', file, '--replace')).toMatchObject({ fields: 1, labels: 1 });
    const { fields } = fieldListSchema.parse(await json('fields', 'list'));
    expect(fields.map(({ record }) => record)).toEqual([fieldOf()]);

    const ask = ['sheet', '--field', 'home-quarter', '--plan', 'lentil'];
    expect(await runDrywake(ask, folder)).toMatchObject({ code: 2, out: '' });
    const label = tempFile('label.csv', 'id,treatment,label_entry\nhome-quarter,stubble,shed-one\n');
    expect((await runDrywake(['fields', 'import', label], folder)).code).toBe(0);
    const printed = await runDrywake(ask, folder);
    expect([printed.code, printed.err]).toEqual([0, '']);
    expect(printed.out).toMatch(
      /^# .* before lentil\n\nFarm: Larkrise \(invented\); Field: Home quarter; 152 acres\n/,
    );
    const page = await runDrywake([...ask, '--html'], folder);
    expect([page.code, page.err]).toEqual([0, '']);
    expect(page.out).toContain('<b>Larkrise (invented), Home quarter, 152 acres</b>');
    const nowhere = await runDrywake(['sheet', '--field', 'nowhere', '--html'], folder);
    expect([nowhere.code, nowhere.out]).toEqual([2, '']);
    expect((await runDrywake([...ask, '--soil', 'clay'], folder)).err).toContain(
      'takes no part of a question',
    );
    expect((await runDrywake(['sheet', '--plan', 'lentil'], folder)).err).toContain(
      'belongs to a kept field',
    );
    const [before] = readdirSync(folder).filter((name) => name.startsWith('fields-before-restore-'));
    const kept = backupSchema.parse(JSON.parse(readFileSync(join(folder, before), 'utf8')));
    expect(new Set(kept.fields.map(({ id }) => id))).toEqual(new Set(['home-quarter', 'alderley-creek']));
  });

  it('refuse what is not there, in two lines', async () => {
    const folder = await folderOfLarkrise();
    await serve(folder);
    for (const argv of [
      ['fields', 'show', 'nowhere'],
      ['fields', 'undo', 'nowhere'],
      ['fields', 'record', 'home-quarter', 'nothing'],
      ['labels', 'show', 'nothing'],
      ['fields', 'restore', tempFile('bad.json', '{"format":"other"}'), '--replace'],
      ['fields', 'import', tempFile('bad.csv', 'a,b\n1,2\n')],
    ]) {
      const { code, out, err } = await runDrywake(argv, folder);
      expect([argv[1], code, out, err.trimEnd().split('\n').length]).toEqual([argv[1], 2, '', 2]);
    }
    const { code, err } = await runDrywake(['fields', 'undo', 'home-quarter'], folder);
    expect([code, err.split('\n')[0]]).toEqual([
      ...[1, 'The field “Larkrise (invented), Home quarter” is as it was first entered.'],
    ]);
  });
});

describe('what the commands print', () => {
  it('is a table of fields, a field, a record and a refresh in words', async () => {
    const folder = await folderOfLarkrise();
    const print = async (...argv: string[]) => (await runDrywake(argv, folder)).out;
    expect(await print('fields', 'list')).toBe(
      [
        'Id            Farm                 Field         Area         Station        Last sprayed  Next planned    Version',
        'home-quarter  Larkrise (invented)  Home quarter  152.0 acres  demo-invented  2026-08-14    pea 2027-04-20  1',
        '',
      ].join('\n'),
    );
    const shown = await print('fields', 'show', 'home-quarter', '--units', 'metric');
    expect(shown).toContain('Area 61.5 ha');
    expect(shown).toContain('12.7 mm on 2 days, 2026-08-20 to 2026-09-03');
    expect(shown).toMatch(
      /lentil on 2027-05-10 \[lentil\]\n {4}\S.*\n {4}Label date \d{4}-\d\d-\d\d; clear date/,
    );
    expect(shown).toMatch(/\n\nModel: drywake residual persistence, version \d+\.\d+\.\d+\.\n$/);
    const record = await print('fields', 'record', 'home-quarter', 'stubble');
    expect(record).toMatch(/^Location +_{20}$/m);
    expect(record).toContain('Still missing: Federal registration number; Location;');
    expect(record).not.toContain('Customer');
    expect(await print('refresh', '--no-fetch')).toBe(
      'Newer weather was not asked for; the answers rest on the records that are here.\n2 planned crops answered; nothing worth telling has changed.\nModel: drywake residual persistence, version 0.1.0.\n',
    );
    expect(await print('labels', 'list')).toMatch(
      /^shed-one +Shed one \(invented\) +flumioxazin \+ pyroxasulfone +2 /m,
    );
    expect(await print('labels', 'show', 'shed-one')).toContain('pea: 6 months; judged conditions: water');
  });

  it('goes into a new file where one is named, and never over one that is there', async () => {
    const folder = await folderOfLarkrise();
    const path = join(tempFolder(), 'fields.csv');
    const first = await runDrywake(['fields', 'export', '--units', 'metric', '--out', path], folder);
    expect([first.code, first.out, first.err]).toEqual([0, '', `Written: ${path}\n`]);
    expect(readFileSync(path, 'utf8').split('\r\n')).toHaveLength(4);
    const second = await runDrywake(['fields', 'backup', '--out', path], folder);
    expect([second.code, second.err.split('\n')[0]]).toEqual([
      ...[2, `The file ${path} is there already; it was left as it is.`],
    ]);
  });
});

it('an own label entry is found by `drywake odds` as well, with and without a server', async () => {
  const folder = await folderOfLarkrise();
  const question = tempFile(
    'question.json',
    JSON.stringify({
      ...{ station: 'demo-invented', labelEntry: 'shed-one', crop: 'lentil' },
      ...{ appliedOn: '2026-08-14', plantOn: '2027-05-10' },
    }),
  );
  const ask = () => runDrywake(['odds', '--question', question, '--json'], folder);
  const without = await ask();
  expect(without.code).toBe(0);
  expect(JSON.parse(without.out).inputs.labelEntry).toEqual({ version: 1, entry: labelOf() });
  await serveDrywake(folder);
  expect((await ask()).out).toBe(without.out);
  const lookBack = ['hindcast', '--question', question, '--base', '1995-2008', '--leads', '60', '--json'];
  const back = await runDrywake([...lookBack, '--workers', '0'], folder);
  expect([back.code, JSON.parse(back.out).question.labelEntry]).toEqual([0, 'shed-one']);
  const empty = tempFolder();
  const none = await runDrywake(['odds', '--question', question], empty);
  expect([none.code, none.err.split('\n')[0]]).toEqual([
    2,
    'There is no label entry "shed-one". [--label-entry]',
  ]);
  expect(existsSync(join(empty, 'fields.duckdb'))).toBe(false);
});

describe('two programs on one data folder', () => {
  it('a second server says who holds the fields and where its page is', async () => {
    const folder = await folderOfLarkrise();
    const { address, pid, end } = await serveDrywake(folder);
    const second = await runDrywake(['serve', '--port', '0'], folder);
    expect(second.code).toBe(1);
    expect(second.err).toContain(
      `is held by another process (number ${pid}).\nA server holds it; its page is at ${address}.`,
    );
    expect(await end('SIGTERM')).toBe(0);
    expect(existsSync(join(folder, 'server.json'))).toBe(false);
    expect((await runDrywake(['fields', 'list'], folder)).code).toBe(0);
  });

  it('a killed server’s word is not taken, and what it had kept is there', async () => {
    const folder = await folderOfLarkrise();
    const { address, end } = await serveDrywake(folder);
    const put = await fetch(new URL('/api/fields/home-quarter', address), {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-match': '"1"' },
      body: JSON.stringify(fieldOf({ note: 'last words' })),
    });
    expect(put.status).toBe(200);
    await end('SIGKILL');
    expect(existsSync(join(folder, 'server.json'))).toBe(true);
    const { code, out } = await runDrywake(['fields', 'show', 'home-quarter'], folder);
    expect([code, out.includes('last words')]).toEqual([0, true]);
  });

  it('a word left behind by another server is no address to ask', async () => {
    const folder = await folderOfLarkrise();
    const { address } = await serveDrywake(folder);
    writeFileSync(join(folder, 'server.json'), JSON.stringify({ address, process: 1, token: null }));
    const { code, err } = await runDrywake(['fields', 'list'], folder);
    expect(code).toBe(1);
    expect(err).toContain('A server probably runs on this data folder');
  });
});
