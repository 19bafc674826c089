import { describe, expect, it } from 'vitest';
import { fieldQuestion } from '../../src/app/fieldQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { type FieldTreatment, fieldTreatmentSchema } from '../../src/schema/fieldTreatment.ts';
import { questionSchema } from '../../src/schema/question.ts';
import { productShape } from '../../src/schema/treatmentEntry.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';

const [demo] = await createDemoReader().stations();
const [lentil] = fieldOf().plans;
const questionOf = (change: Parameters<typeof fieldOf>[0] = {}, station = demo, plan = lentil) =>
  fieldQuestion(fieldOf(change), plan, station);

describe('the question of a field', () => {
  it('is one that can be asked, with all that the field tells', () => {
    expect(questionSchema.parse(questionOf())).toMatchObject({
      ...{ station: 'demo-invented', soilClass: 'loam', organicMatterPercent: 2.4, soilPh: 7.1 },
      ...{ appliedOn: '2026-08-14', residual: 'flumioxazin', crop: 'lentil', plantOn: '2027-05-10' },
      irrigation: [{ date: '2026-08-25', mm: 25 }],
      evidence: [{ kind: 'bioassay', on: '2026-09-20', injured: false }],
    });
  });

  it('takes the weather as observed up to the end of the record, once that reaches the application', () => {
    expect(questionOf().asOf).toBe(demo.lastDate);
    expect(questionOf({}, { ...demo, lastDate: '2026-08-14' }).asOf).toBe('2026-08-14');
    expect(questionOf({}, { ...demo, lastDate: '2026-08-13' })).not.toHaveProperty('asOf');
  });

  it('takes the field’s latitude only where the station has none', () => {
    expect(questionOf()).not.toHaveProperty('latitudeDeg');
    expect(questionOf({}, { ...demo, latitudeDeg: null }).latitudeDeg).toBe(45.66);
  });

  it('asks about the latest treatment before planting', () => {
    const early = { ...lentil, plantOn: '2026-06-01' };
    expect(questionOf({ evidence: [] }, demo, early)).toMatchObject({
      ...{ residual: 'imazethapyr', interval: '9 months', rateFraction: 0.5 },
    });
    expect(() => questionOf({}, demo, { ...lentil, plantOn: '2026-01-01' })).toThrow(
      'Every treatment of this field lies after the planting date 2026-01-01.',
    );
    expect(() => questionOf({ treatments: [] })).toThrow('No treatment of this field is entered.');
    expect(() => questionOf({ station: null })).toThrow('No weather station is chosen for this field.');
  });

  it('leaves out evidence from before every treatment that counts', () => {
    const evidence = [{ kind: 'bioassay' as const, on: '2025-05-01', injured: true }];
    expect(questionOf({ evidence })).not.toHaveProperty('evidence');
  });

  it('puts earlier treatments and overlap zones beside it, the oldest left out', () => {
    const treatments = [
      ...fieldOf().treatments,
      { id: 'old', appliedOn: '2022-05-09', residual: 'picloram' },
      { id: 'shed', appliedOn: '2026-05-01', labelEntry: 'shed-one' },
    ];
    const question = questionSchema.parse(questionOf({ treatments })) as unknown as Record<string, unknown>;
    expect(question.zones).toEqual([{ name: 'turn rows', overlapFactor: 2 }]);
    expect(question.otherTreatments).toMatchObject([
      { appliedOn: '2026-05-01', labelEntry: 'shed-one' },
      { appliedOn: '2026-04-20', residual: 'imazethapyr', interval: '9 months', rateFraction: 0.5 },
    ]);
  });

  it('carries everything that a treatment can say, of the main one and of those beside it', () => {
    const full: FieldTreatment = fieldTreatmentSchema.parse({
      ...{ id: 'all', appliedOn: '2026-08-14', residual: 'flumioxazin', labelEntry: 'shed-one' },
      ...{ rateFraction: 0.8, rateGramsPerHa: 90, overlapFactor: 1.5, canopyFraction: 0.2 },
      ...{ growthStage: { plants: 'cereals', bbch: 31 }, interval: '5 months', halfLifeDays: 20 },
    });
    const { id: _id, zones: _zones, intervals: _intervals, ...said } = full;
    expect(Object.keys(said).sort()).toEqual(Object.keys(productShape).sort());
    const question = questionOf({ treatments: [full, { ...full, id: 'before', appliedOn: '2026-05-01' }] });
    expect(question).toMatchObject(said);
    expect(question.otherTreatments).toEqual([{ ...said, appliedOn: '2026-05-01' }]);
  });

  it('takes the interval that is kept for the planned crop, else the one for every crop', () => {
    const treatments = fieldOf().treatments.map((one) => ({
      ...one,
      intervals: [{ crop: 'Lentil ', interval: '5 months' }],
    }));
    expect(questionOf({ treatments })).toMatchObject({
      interval: '5 months',
      otherTreatments: [{ interval: '5 months' }],
    });
    const canola = questionOf({ treatments }, demo, { ...lentil, crop: 'canola' });
    expect(canola).not.toHaveProperty('interval');
    expect(canola.otherTreatments).toMatchObject([{ interval: '9 months' }]);
  });
});
