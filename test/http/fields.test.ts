import { describe, expect, it } from 'vitest';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { problemSchema } from '../../src/schema/answer.ts';
import { backupSchema, restoreResultSchema } from '../../src/schema/backup.ts';
import { fieldAnswerSchema, refreshSchema } from '../../src/schema/fieldAnswer.ts';
import { fieldListSchema, storedFieldSchema } from '../../src/schema/fieldRecord.ts';
import { keptLabelSchema, labelListSchema } from '../../src/schema/labelEntry.ts';
import { removedSchema } from '../../src/schema/recordId.ts';
import { applicationRecordSchema } from '../../src/schema/restrictedUse.ts';
import { sheetSchema } from '../../src/schema/sheet.ts';
import { tableImportSchema } from '../../src/schema/tableImport.ts';
import { fieldOf, labelOf, larkrise } from '../fixtures/fields/larkrise.ts';
import { fieldsApp } from './fieldsApp.ts';

const NEW = { 'if-none-match': '*' };
const at = (version: number) => ({ 'if-match': `"${version}"` });
const PATH = '/api/fields/home-quarter';

describe('the routes of fields', () => {
  it('keep, list, read, change, remove and undo, each true to its schema', async () => {
    const { ask } = await fieldsApp();
    const put = await ask('PUT', PATH, larkrise, NEW);
    expect(put.status).toBe(200);
    expect(put.headers.get('etag')).toBe('"1"');
    expect(storedFieldSchema.parse(put.body).record).toEqual(fieldOf());
    await ask('PUT', '/api/fields/a', { ...larkrise, id: 'a', farm: 'Alderley (invented)' }, NEW);
    const list = fieldListSchema.parse((await ask('GET', '/api/fields')).body);
    expect(list.fields.map(({ record }) => record.id)).toEqual(['a', 'home-quarter']);
    expect((await ask('PUT', PATH, { ...larkrise, note: 'b' }, at(1))).body).toMatchObject({ version: 2 });
    const removed = await ask('DELETE', PATH, undefined, at(2));
    expect(removedSchema.parse(removed.body)).toMatchObject({ id: 'home-quarter', version: 3 });
    expect((await ask('GET', PATH)).status).toBe(404);
    expect(fieldListSchema.parse((await ask('GET', '/api/fields')).body).removed).toHaveLength(1);
    const back = await ask('POST', `${PATH}/undo`, { version: 3 });
    expect(storedFieldSchema.parse(back.body)).toMatchObject({ version: 4, record: { note: 'b' } });
    expect((await ask('GET', PATH)).headers.get('etag')).toBe('"4"');
  });

  it('refuse a change without a version, or from another one, in the one error shape', async () => {
    const { ask } = await fieldsApp();
    await ask('PUT', PATH, larkrise, NEW);
    const bare = await ask('PUT', PATH, larkrise);
    expect([bare.status, problemSchema.parse(bare.body).code]).toEqual([428, 'VERSION_MISSING']);
    expect((await ask('DELETE', PATH)).status).toBe(428);
    await ask('PUT', PATH, { ...larkrise, note: 'theirs' }, at(1));
    const late = await ask('PUT', PATH, { ...larkrise, note: 'mine' }, at(1));
    expect(late.status).toBe(409);
    const problem = problemSchema.parse(late.body);
    expect(problem.code).toBe('FIELD_CHANGED');
    expect(storedFieldSchema.parse(problem.details.kept)).toMatchObject({
      version: 2,
      record: { note: 'theirs' },
    });
    expect((await ask('PUT', PATH, larkrise, NEW)).body).toMatchObject({ code: 'FIELD_EXISTS' });
    expect((await ask('PUT', PATH, larkrise, { 'if-match': 'W/x' })).status).toBe(422);
    expect((await ask('PUT', '/api/fields/other', larkrise, NEW)).body).toMatchObject({
      code: 'ID_DIFFERS',
    });
  });

  it('let exactly one of fifty tabs through that save the same version at once, and undo it whole', async () => {
    const { ask } = await fieldsApp();
    await ask('PUT', PATH, larkrise, NEW);
    for (const version of [1, 2]) {
      const tabs = Array.from({ length: 50 }, (_, tab) =>
        ask('PUT', PATH, { ...larkrise, note: `${version}/${tab}` }, at(version)),
      );
      const answers = await Promise.all(tabs);
      const saved = answers.filter(({ status }) => status === 200);
      expect(saved.map(({ body }) => (body as { version: number }).version)).toEqual([version + 1]);
      expect(answers.filter(({ status }) => status === 409)).toHaveLength(49);
      expect((await ask('GET', PATH)).body).toEqual(saved[0].body);
    }
  });

  it.each([
    ['a place beyond the pole', { place: { latitudeDeg: 95, longitudeDeg: 0 } }, 'place.latitudeDeg'],
    ['a day twice', { gauge: [1, 2].map((mm) => ({ date: '2026-09-01', mm })) }, 'gauge'],
    [
      'a treatment of nothing',
      { treatments: [{ id: 'x', appliedOn: '2026-08-01' }] },
      'treatments.0.residual',
    ],
    ['an id that cannot stand in an address', { id: '../x' }, 'id'],
    ['a key that there is not', { colour: 'red' }, ''],
  ])('refuse %s, naming the field', async (_, change, field) => {
    const { ask } = await fieldsApp();
    const refused = await ask('PUT', PATH, { ...larkrise, ...change }, NEW);
    expect(refused.status).toBe(422);
    expect(problemSchema.parse(refused.body).details.field).toBe(field);
  });

  it('let no page of another origin change anything, and no other name of this computer in', async () => {
    const { app, ask } = await fieldsApp();
    const foreign = { origin: 'http://elsewhere.example', 'sec-fetch-site': 'cross-site' };
    for (const [method, path, body] of [
      ['PUT', PATH, larkrise],
      ['DELETE', PATH, undefined],
      ['POST', `${PATH}/undo`, { version: 1 }],
      ['POST', '/api/fields/refresh', {}],
      ['POST', '/api/restore', {}],
    ] as const) {
      const { status } = await ask(method, path, body, { ...foreign, ...NEW });
      expect([path, status]).toEqual([path, 403]);
    }
    for (const path of ['/api/fields', '/api/labels', '/api/backup', '/api/fields.csv']) {
      expect((await app.request(`http://elsewhere.example${path}`)).status).toBe(403);
      const read = await app.request(`http://localhost${path}`, { headers: foreign });
      expect(read.headers.get('access-control-allow-origin')).toBeNull();
    }
  });

  it('take a field of a long season, larger than a question may be', async () => {
    const { ask } = await fieldsApp();
    const gauge = Array.from({ length: 1200 }, (_, day) => ({
      date: new Date(Date.UTC(2024, 0, 1 + day)).toISOString().slice(0, 10),
      mm: 1.234567,
    }));
    const tillage = Array.from({ length: 100 }, () => ({ date: '2026-10-01', note: 'x'.repeat(300) }));
    const big = { ...larkrise, gauge, tillage };
    expect(JSON.stringify(big).length).toBeGreaterThan(64 * 1024);
    expect((await ask('PUT', PATH, big, NEW)).status).toBe(200);
  });
});

describe('answers of a field', () => {
  it('are those of the question it makes, one for each plan, with the reason where there is none', async () => {
    const { ask } = await fieldsApp();
    const plans = [...(larkrise.plans ?? []), { id: 'early', crop: 'lentil', plantOn: '2026-03-01' }];
    await ask('PUT', PATH, { ...larkrise, plans }, NEW);
    const { body } = await ask('GET', `${PATH}/answers`);
    const answers = fieldAnswerSchema.array().parse(body);
    expect(answers.map(({ planId, problem }) => [planId, problem?.code])).toEqual([
      ['lentil', undefined],
      ['pea-grazed', undefined],
      ['early', 'FIELD_WITHOUT_TREATMENT'],
    ]);
    const [lentil] = answers;
    expect(lentil.question).toMatchObject({
      ...{ station: 'demo-invented', residual: 'flumioxazin', appliedOn: '2026-08-14', asOf: '2026-09-30' },
      ...{
        plantOn: '2027-05-10',
        gauge: [
          { date: '2026-08-20', rainMm: 12.7 },
          { date: '2026-09-03', rainMm: 0 },
        ],
      },
    });
    const asked = (await ask('POST', '/api/odds', lentil.question)).body as Record<string, unknown>;
    for (const key of ['sentence', 'labelDate', 'clearDate', 'oddsAtPlanting', 'conditions'] as const) {
      expect(lentil[key]).toEqual(asked[key]);
    }
  });

  it('rest on the user’s own label entry where the treatment names one', async () => {
    const { ask } = await fieldsApp();
    await ask('PUT', '/api/labels/shed-one', labelOf(), NEW);
    const treatments = [{ id: 't', appliedOn: '2026-08-14', labelEntry: 'shed-one' }];
    await ask('PUT', PATH, { ...larkrise, treatments, evidence: [] }, NEW);
    const [lentil] = fieldAnswerSchema.array().parse((await ask('GET', `${PATH}/answers`)).body);
    expect(lentil.problem).toBeUndefined();
    expect(lentil.labelDate).toBe('2026-12-14');
    await ask('DELETE', '/api/labels/shed-one', undefined, at(1));
    const [without] = fieldAnswerSchema.array().parse((await ask('GET', `${PATH}/answers`)).body);
    expect(without.problem?.code).toBe('LABEL_UNKNOWN');
  });

  it('are given again by a refresh, the first time without anything to compare', async () => {
    const { ask } = await fieldsApp();
    await ask('PUT', PATH, larkrise, NEW);
    const { status, body } = await ask('POST', '/api/fields/refresh', { fetch: false });
    expect(status).toBe(200);
    expect(refreshSchema.parse(body)).toMatchObject({
      ...{ answered: 2, changes: [], problems: [], weather: { fetched: false, stations: [] } },
    });
    // Newer weather is looked for unless it is not wanted; the demo's record is nobody's to ask for.
    const again = refreshSchema.parse((await ask('POST', '/api/fields/refresh', {})).body);
    expect(again.weather).toMatchObject({
      fetched: true,
      text: 'No field uses a station of the public records service.',
    });
  });
});

describe('the sheet of a kept field', () => {
  const intervals = [{ crop: 'Lentil', interval: '4 months' }];
  const confirmed = fieldOf({
    treatments: fieldOf().treatments.map((one) => (one.id === 'stubble' ? { ...one, intervals } : one)),
  });

  it('prints farm, field, size and reasons, in the units asked for, once its intervals are confirmed', async () => {
    const { ask } = await fieldsApp();
    await ask('PUT', PATH, larkrise, NEW);
    expect((await ask('GET', `${PATH}/sheet?plan=lentil`)).body).toMatchObject({
      code: 'SHEET_UNCONFIRMED',
      details: { unconfirmed: ['flumioxazin'] },
    });
    await ask('PUT', PATH, confirmed, at(1));
    const sheet = sheetSchema.parse((await ask('GET', `${PATH}/sheet?plan=lentil`)).body);
    expect(sheet.field).toEqual({ farm: 'Larkrise (invented)', name: 'Home quarter', area: '152 acres' });
    expect(sheet.reasons.join(' ')).toContain('bioassay');
    expect(sheet.zones[0].label).toContain('turn rows');
    const metric = sheetSchema.parse((await ask('GET', `${PATH}/sheet?plan=lentil&units=metric`)).body);
    expect(metric.field?.area).toBe('61.5 ha');
    // The interval before lentil says nothing of pea.
    expect((await ask('GET', `${PATH}/sheet?plan=pea-grazed`)).body).toMatchObject({
      code: 'SHEET_UNCONFIRMED',
    });
    expect(await ask('GET', `${PATH}/sheet`)).toMatchObject({
      status: 404,
      body: { code: 'PLAN_UNKNOWN', details: { known: ['lentil', 'pea-grazed'] } },
    });
    expect((await ask('GET', '/api/fields/nowhere/sheet')).status).toBe(404);
  });

  it('is a file of its own too, with the names of the field on it', async () => {
    const { ask, app } = await fieldsApp();
    await ask('PUT', PATH, { ...confirmed, name: '<b>Home</b> quarter' }, NEW);
    const saved = (field: string) =>
      app.request(`/api/sheet/file?field=${field}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ ...demoQuestion, interval: '4 months' }),
      });
    expect(await (await saved('home-quarter')).text()).toContain(
      '<b>Larkrise (invented), &lt;b&gt;Home&lt;/b&gt; quarter, 152 acres</b>',
    );
    expect((await saved('nowhere')).status).toBe(404);
  });
});

describe('the restricted-use record of a treatment', () => {
  it('says what is filled in and what is missing', async () => {
    const { ask } = await fieldsApp();
    await ask('PUT', PATH, larkrise, NEW);
    const { body } = await ask('GET', `${PATH}/record/stubble`);
    const record = applicationRecordSchema.parse(body);
    const valueAt = (label: string) => record.lines.find((line) => line.label === label)?.value;
    expect(valueAt('Product name')).toBe('Shed one (invented)');
    expect(valueAt('Size of area treated')).toBe('152 acres');
    expect(valueAt('Date of application')).toBe('August 14, 2026');
    expect(record.missing).toEqual([
      'Federal registration number',
      'Location',
      'Crop, commodity, stored product or site',
      'Certification number',
    ]);
    expect((await ask('GET', `${PATH}/record/nothing`)).body).toMatchObject({ code: 'TREATMENT_UNKNOWN' });
    expect((await ask('GET', '/api/fields/nowhere/record/x')).status).toBe(404);
  });
});

describe('the routes of label entries', () => {
  it('do the same, and refuse an interval that cannot be read', async () => {
    const { ask } = await fieldsApp();
    const path = '/api/labels/shed-one';
    const put = await ask('PUT', path, labelOf(), NEW);
    expect(keptLabelSchema.parse(put.body).entry).toEqual(labelOf());
    const bad = labelOf({ intervals: [{ crop: 'pea', interval: 'soon', clauses: [], conditions: '' }] });
    expect((await ask('PUT', path, bad, at(1))).body).toMatchObject({ code: 'LABEL_UNREADABLE' });
    await ask('PUT', path, labelOf({ note: 'b' }), at(1));
    const late = await ask('PUT', path, labelOf({ note: 'c' }), at(1));
    expect(late.status).toBe(409);
    expect(keptLabelSchema.parse(problemSchema.parse(late.body).details.kept).entry.note).toBe('b');
    await ask('DELETE', path, undefined, at(2));
    expect(labelListSchema.parse((await ask('GET', '/api/labels')).body)).toMatchObject({
      ...{ labels: [], removed: [{ id: 'shed-one', version: 3 }] },
    });
    expect((await ask('POST', `${path}/undo`, { version: 3 })).body).toMatchObject({ entry: { note: 'b' } });
  });
});

describe('backup and restore', () => {
  it('give everything back as it was, history and all, and keep what they replaced', async () => {
    const one = await fieldsApp();
    await one.ask('PUT', PATH, larkrise, NEW);
    await one.ask('PUT', PATH, { ...larkrise, note: 'b' }, at(1));
    await one.ask('PUT', '/api/labels/shed-one', labelOf(), NEW);
    await one.ask('DELETE', '/api/labels/shed-one', undefined, at(1));
    await one.ask('POST', '/api/fields/refresh', {});
    const backup = backupSchema.parse((await one.ask('GET', '/api/backup')).body);
    expect(backup.lastAnswers).toHaveLength(2);

    const other = await fieldsApp();
    const first = await other.ask('POST', '/api/restore', { replace: true, backup });
    expect(restoreResultSchema.parse(first.body)).toEqual({ fields: 1, labels: 1, keptAs: null });
    const { madeAt, ...again } = backupSchema.parse((await other.ask('GET', '/api/backup')).body);
    const { madeAt: before, ...all } = backup;
    expect(again).toEqual(all);
    expect((await other.ask('POST', `${PATH}/undo`, { version: 2 })).body).toMatchObject({
      record: { note: larkrise.note },
    });
    const twice = await other.ask('POST', '/api/restore', { replace: true, backup });
    const { keptAs } = restoreResultSchema.parse(twice.body);
    expect(keptAs).toMatch(/^fields-before-restore-\d{8}T\d+Z\.json$/);
    expect((await other.ask('GET', PATH)).body).toMatchObject({ version: 2, record: { note: 'b' } });
    expect([madeAt, before].every((time) => time.startsWith('2026-11-26'))).toBe(true);
  });

  it('ask that replacing is meant, and change nothing where the backup is not whole', async () => {
    const { ask } = await fieldsApp();
    await ask('PUT', PATH, larkrise, NEW);
    const backup = backupSchema.parse((await ask('GET', '/api/backup')).body);
    expect((await ask('POST', '/api/restore', { backup })).status).toBe(422);
    const doubled = { ...backup, fields: [...backup.fields, ...backup.fields] };
    expect((await ask('POST', '/api/restore', { replace: true, backup: doubled })).body).toMatchObject({
      code: 'BACKUP_UNREADABLE',
    });
    expect((await ask('GET', PATH)).body).toMatchObject({ version: 1 });
  });
});

describe('the tables', () => {
  it('go out and come in, told true to their schemas, and only as what they are', async () => {
    const { app, ask } = await fieldsApp();
    await ask('PUT', PATH, larkrise, NEW);
    await ask('PUT', '/api/labels/shed-one', labelOf(), NEW);
    const other = await fieldsApp();
    for (const path of ['/api/fields.csv', '/api/labels.csv']) {
      const sent = await app.request(`http://localhost${path}?units=us`);
      expect(sent.headers.get('content-type')).toBe('text/csv; charset=utf-8');
      const body = Buffer.from(await sent.arrayBuffer());
      expect([...body.subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
      const post = (type: string, origin = 'http://localhost') =>
        other.app.request(`http://localhost${path}`, {
          method: 'POST',
          body,
          headers: { 'content-type': type, origin },
        });
      expect((await post('text/plain')).status).toBe(422);
      expect((await post('text/csv', 'http://elsewhere.example')).status).toBe(403);
      const { saved, faults } = tableImportSchema.parse(await (await post('text/csv')).json());
      expect([saved.length, faults]).toEqual([1, []]);
    }
    expect((await other.ask('GET', PATH)).body).toMatchObject({ record: fieldOf() });
    expect((await other.ask('GET', '/api/labels/shed-one')).body).toMatchObject({ entry: labelOf() });
    expect((await ask('GET', '/api/fields.csv?units=imperial')).status).toBe(422);
  });
});
