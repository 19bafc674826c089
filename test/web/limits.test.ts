import { describe, expect, it } from 'vitest';
import { schemaRefusal } from '../../src/app/schemaRefusal.ts';
import { questionSchema } from '../../src/schema/question.ts';
import { limitsReworded } from '../../web/src/units/limitsReworded.ts';

/** The refusal of a question with these fields, as the server gives it. */
function refusal(fields: Record<string, unknown>) {
  const given = {
    ...{ station: 'demo-invented', appliedOn: '2026-08-14', plantOn: '2027-05-10' },
    ...{ residual: 'flumioxazin', crop: 'lentil' },
    ...fields,
  };
  const { success, error } = questionSchema.safeParse(given);
  if (success) throw new Error('This question is taken.');
  const { message, hint, details } = schemaRefusal('REQUEST_UNREADABLE', error.issues, given);
  return { message, hint, details };
}

describe('a number past its limits', () => {
  it.each([
    [
      { irrigation: [{ date: '2026-08-20', mm: 508 }] },
      ['“20 in” is too large', 'at most 19.69 in.'],
      ['“508 mm” is too large', 'at most 500 mm.'],
    ],
    [
      { elevationM: 10_000 },
      ['“32808 ft” is too large', 'at most 19685 ft.'],
      ['“10000 m” is too large', 'at most 6000 m.'],
    ],
    [
      { rateGramsPerHa: -1 },
      ['“-0.01427 oz/acre” is too small', 'more than 0 oz/acre.'],
      ['“-1 g/ha” is too small', 'more than 0 g/ha.'],
    ],
    [
      { rateFraction: 50 },
      ['“5000 %” is too large', 'at most 1000 %.'],
      ['“5000 %” is too large', 'at most 1000 %.'],
    ],
    [
      { oddsLimit: 2 },
      ['“40 in 20” is too large', 'less than 20 in 20.'],
      ['“40 in 20” is too large', 'less than 20 in 20.'],
    ],
    [
      { assume: { labelRainMm: 254 } },
      ['“10 in” is too large', 'at most 7.874 in.'],
      ['“254 mm” is too large', 'at most 200 mm.'],
    ],
    [{ soilPh: 20 }, ['“20” is too large', 'at most 11.'], ['“20” is too large', 'at most 11.']],
  ])('%j is told in the units of the page', (fields, us, metric) => {
    for (const [units, [message, hint]] of [
      ['us', us],
      ['metric', metric],
    ] as const) {
      const told = limitsReworded(refusal(fields), units);
      expect(told.message).toContain(message);
      expect(told.hint).toContain(hint);
      expect(limitsReworded(told, units)).toEqual(told);
    }
  });

  it('is the only refusal that changes', () => {
    const missing = refusal({ soilClass: 'mud' });
    expect(limitsReworded(missing, 'us')).toEqual(missing);
  });
});
