import { describe, expect, it } from 'vitest';
import { FIELD_TABLE } from '../../../src/app/tables/fieldTable.ts';
import { importTable } from '../../../src/app/tables/importTable.ts';
import { LABEL_TABLE } from '../../../src/app/tables/labelTable.ts';
import { readTable } from '../../../src/app/tables/readTable.ts';
import { writeTable } from '../../../src/app/tables/writeTable.ts';
import { type FieldRecord, fieldRecordSchema } from '../../../src/schema/fieldRecord.ts';
import { labelEntrySchema } from '../../../src/schema/labelEntry.ts';
import { fieldOf, labelOf } from '../../fixtures/fields/larkrise.ts';
import { refusalOf } from '../../refusal.ts';
import { openFields } from '../../store/openFields.ts';

const fields = [
  fieldOf(),
  fieldOf({ id: 'bare', farm: '', place: null, treatments: [], plans: [], soilClass: undefined }),
  fieldOf({
    id: 'full',
    treatments: [
      {
        ...{ id: 'all', appliedOn: '2026-08-14', labelEntry: 'shed-one', rateGramsPerHa: 89.5 },
        growthStage: { plants: 'cereals', bbch: 31 },
        intervals: [{ crop: 'lentil', interval: '4 months' }],
      },
    ],
  }),
  fieldOf({ id: 'sandy', name: '@west "40", 3', soilClass: undefined, sandPercent: 61.3, clayPercent: 12 }),
];
const none = new Map<string, FieldRecord>();

describe('a table of fields', () => {
  it('brings every field back, in both systems of units', () => {
    for (const units of ['metric', 'us'] as const) {
      const { records, faults } = readTable(writeTable(fields, FIELD_TABLE, units), FIELD_TABLE, none);
      expect(faults).toEqual([]);
      expect(records.map(({ record }) => record)).toEqual(fields);
    }
  });

  it('says units in the heads of its columns', () => {
    const [head, row] = writeTable([fieldOf({ treatments: [], plans: [] })], FIELD_TABLE, 'us').split('\r\n');
    expect(head).toContain('area_acres');
    expect(head).toContain('gauge_in');
    expect(row).toContain(',151.969');
    expect(row).toContain('2026-08-20=0.5');
  });

  it('changes nothing where it is read into what it was written from, whatever the digits', async () => {
    const store = await openFields();
    const areaHa = 152 * 0.40468564224;
    await store.fields.put(fieldOf({ areaHa, gauge: [{ date: '2026-08-20', mm: 0.1 + 0.2 }] }), null);
    const { kept } = await store.fields.list();
    for (const units of ['metric', 'us'] as const) {
      const text = writeTable([kept[0].record], FIELD_TABLE, units);
      expect(await importTable(text, FIELD_TABLE, store.fields)).toEqual({
        ...{ saved: [], unchanged: ['home-quarter'], faults: [] },
      });
    }
  });

  it('takes a plain list as people type it', () => {
    const text = `Farm,Field,Area_acres,Station,Soil_class,Residual,Applied_on,Crop,Plant_on
Alderley,North 80,80,demo-invented,silt loam,flumioxazin,2026-08-14,lentil,2027-05-10
Alderley,North 80,,,,,,pea,2027-04-20
Alderley,Creek,12.5,demo-invented,clay,flumioxazin,2026-08-20,,
`;
    const { records, faults } = readTable(text, FIELD_TABLE, none);
    expect(faults).toEqual([]);
    expect(records.map(({ line, record }) => [line, record.id, record.plans.map(({ id }) => id)])).toEqual([
      [2, 'alderley-north-80', ['plan-1', 'plan-2']],
      [4, 'alderley-creek', []],
    ]);
    expect(records[0].record).toMatchObject({
      areaHa: 32.3748513792,
      treatments: [{ id: 'treatment-1', residual: 'flumioxazin', rateFraction: 1 }],
    });
  });

  it('leaves alone what it has no column for', () => {
    const before = new Map([['home-quarter', fieldOf()]]);
    const { records } = readTable('id,soil_ph,note\nhome-quarter,6.4,\n', FIELD_TABLE, before);
    expect(records[0].record).toEqual(fieldOf({ soilPh: 6.4, note: '' }));
    const rates = readTable('id,treatment,rate_fraction\nhome-quarter,stubble,0.5\n', FIELD_TABLE, before);
    expect(rates.records[0].record.treatments).toEqual([{ ...fieldOf().treatments[0], rateFraction: 0.5 }]);
  });

  it('tells each fault by line and column, and takes the other rows', async () => {
    const { fields: shelf } = await openFields();
    const text = `id,field,area_ha,soil_ph,treatment,residual,applied_on,colour
good,Good,10,7,t,flumioxazin,2026-08-14,red
no-number,Bad,ten,7,t,flumioxazin,2026-08-14,
out-of-range,Bad,10,70,t,flumioxazin,2026-08-14,
no-date,Bad,10,7,t,flumioxazin,14/8/2026,
Bad Id,Bad,10,7,,,,
differs,One,10,7,,,,
differs,Two,,,,,,
also-good,Good too,10,7,,,,
`;
    const { saved, faults } = await importTable(text, FIELD_TABLE, shelf);
    expect(saved.map(({ id }) => id)).toEqual(['good', 'also-good']);
    expect(faults.map(({ line, column }) => [line, column])).toEqual([
      [1, 'colour'],
      [3, 'area_ha'],
      [4, 'soil_ph'],
      [5, 'applied_on'],
      [6, 'id'],
      [8, 'field'],
    ]);
    expect(faults[1].message).toBe('"ten" is no number');
    expect((await shelf.list()).kept).toHaveLength(2);
  });

  it('makes changes that can be undone', async () => {
    const { fields: shelf } = await openFields();
    await shelf.put(fieldOf({ soilPh: 7.1 }), null);
    await importTable('id,soil_ph\nhome-quarter,6\n', FIELD_TABLE, shelf);
    expect((await shelf.get('home-quarter'))?.record.soilPh).toBe(6);
    expect((await shelf.undo('home-quarter', 2)).record).toEqual(fieldOf());
  });

  it('is refused where nothing in it can name a field', async () => {
    const refusal = await refusalOf(Promise.resolve().then(() => readTable('a,b\n1,2\n', FIELD_TABLE, none)));
    expect(refusal.message).toBe('The table, line 1: no column is headed id, farm, field.');
  });
});

describe('a table of label entries', () => {
  it('brings every entry back, in both systems of units', () => {
    const entries = [
      labelOf(),
      labelOf({ id: 'other', name: '=other', actives: [{ name: 'imazethapyr' }] }),
      labelOf({
        id: 'two-waits',
        intervals: [
          { crop: 'flax', interval: '2 months', foodFeedInterval: '5 months', clauses: [], conditions: '' },
        ],
      }),
    ];
    for (const units of ['metric', 'us'] as const) {
      const { records, faults } = readTable(writeTable(entries, LABEL_TABLE, units), LABEL_TABLE, new Map());
      expect(faults).toEqual([]);
      expect(records.map(({ record }) => record)).toEqual(entries);
    }
  });

  it('refuses an interval that cannot be read, by its line', () => {
    const text =
      'name,label_version,entered_on,active_1,crop,interval\nShed,1,2026-01-01,flumioxazin,pea,soon\n';
    const { faults, records } = readTable(text, LABEL_TABLE, new Map());
    expect(records).toEqual([]);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ line: 2 });
    expect(faults[0].message).toContain('pea');
  });
});

/** Keys of a schema, or of the parts of a list in it. */
const keysOf = (schema: { readonly shape: object }) => Object.keys(schema.shape);

it('every part of a field and of a label entry has a column', () => {
  const [treatments, plans] = FIELD_TABLE.lists;
  const [intervals] = LABEL_TABLE.lists;
  const fieldShape = fieldRecordSchema.shape;
  const labelShape = labelEntrySchema.shape;
  for (const [columns, keys] of [
    [FIELD_TABLE.head, keysOf(fieldRecordSchema).filter((key) => key !== 'treatments' && key !== 'plans')],
    [treatments.columns, keysOf(fieldShape.treatments.unwrap().element)],
    [plans.columns, keysOf(fieldShape.plans.unwrap().element)],
    [LABEL_TABLE.head, keysOf(labelEntrySchema).filter((key) => key !== 'intervals')],
    [intervals.columns, keysOf(labelShape.intervals.element)],
  ] as const) {
    expect(new Set(columns.map(({ path }) => path.split('.')[0]))).toEqual(new Set(keys));
  }
  const active = LABEL_TABLE.head.filter(({ path }) => path.startsWith('actives.0.'));
  expect(active.map(({ path }) => path.split('.')[2])).toEqual(keysOf(labelShape.actives.element));
});
