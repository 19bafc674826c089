import { expect, it } from 'vitest';
import { outcomeScores } from '../../src/analysis/outcomeScores.ts';
import { answerField } from '../../src/app/answerField.ts';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { outcomeTally } from '../../src/app/outcomeTally.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { outcomeTallySchema } from '../../src/schema/outcomeTally.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { fieldOf } from '../fixtures/fields/larkrise.ts';

const weather = createDemoReader();
const deps = { catalogue, climates: createClimateCache(weather), version: '1' };
const stations = await weather.stations();

/** A field sprayed one summer and sown the next spring, with what became of the crop. */
const season = (id: string, year: number, state: 'clean' | 'injured', change: object = {}) =>
  fieldOf({
    ...{ id, name: id, gauge: [], irrigation: [], evidence: [] },
    treatments: [{ id: 'spray', appliedOn: `${year}-08-14`, residual: 'flumioxazin' }],
    plans: [{ id: 'lentil', crop: 'lentil', plantOn: `${year + 1}-05-10` }],
    outcomes: [{ on: `${year + 1}-06-20`, crop: 'Lentil', state }],
    ...change,
  });

it('holds each outcome against the odds that stood on planting day', async () => {
  const late = { kind: 'bioassay', on: '2021-06-01', injured: true } as const;
  const fields = [
    season('hurt', 2020, 'injured', { evidence: [late] }),
    season('clean', 2015, 'clean'),
    season('unplanned', 2016, 'clean', { plans: [] }),
    season('nowhere', 2017, 'clean', { station: 'gone' }),
    season('grass', 2018, 'clean', {
      treatments: [{ id: 'g', appliedOn: '2018-08-14', residual: 'glyphosate', interval: '0 days' }],
    }),
  ];
  const tally = outcomeTallySchema.parse(await outcomeTally(fields, stations, deps));
  expect(tally.outcomes.map(({ fieldId, injured }) => [fieldId, injured])).toEqual([
    ['clean', false],
    ['hurt', true],
  ]);
  for (const { plantOn, odds } of tally.outcomes) {
    const asked = { station: 'demo-invented', residual: 'flumioxazin' };
    const appliedOn = `${Number(plantOn.slice(0, 4)) - 1}-08-14`;
    const { organicMatterPercent, soilPh, soilClass } = fields[0];
    const whole = await answerField(
      {
        ...asked,
        organicMatterPercent,
        soilPh,
        soilClass,
        crop: 'lentil',
        appliedOn,
        plantOn,
        asOf: plantOn,
      },
      deps,
    );
    expect(odds).toBe(whole.oddsAtPlanting);
  }
  expect(tally.leftOut.map(({ fieldId, reason }) => [fieldId, reason])).toEqual([
    ['unplanned', 'No Lentil is planned with a planting date up to then.'],
    ['nowhere', expect.stringContaining('gone')],
    ['grass', 'No carryover is modelled before this crop.'],
  ]);
  expect(tally.sentence).toMatch(
    /^Of 2 crops looked at in fields, 1 was hurt; the odds had said \d\.\d\. So few say little\. 3 without odds are left out\.$/,
  );
  expect(tally.expected).toBeCloseTo(tally.outcomes[0].odds + tally.outcomes[1].odds, 12);
});

it('says so where nothing is recorded', async () => {
  const tally = await outcomeTally([season('quiet', 2020, 'clean', { outcomes: [] })], stations, deps);
  expect(tally).toMatchObject({ counted: 0, expected: null, brier: null, skill: null, bins: [] });
  expect(tally.sentence).toBe('No outcome is recorded in the fields that are kept.');
});

it('scores single outcomes by band, with intervals from their number', () => {
  const given = [0.1, 0.1, 0.1, 0.9, 1].map((odds, index) => ({ odds, injured: index >= 2 }));
  const { brier, skill, bins, expected } = outcomeScores(given);
  expect(expected).toBeCloseTo(2.2, 12);
  expect(brier).toBeCloseTo((0.01 + 0.01 + 0.81 + 0.01 + 0) / 5, 12);
  expect(skill).toBeCloseTo(1 - 0.168 / 0.24, 12);
  expect(bins.map(({ from, outcomes, injured }) => [from, outcomes, injured])).toEqual([
    [0, 3, 1],
    [0.8, 2, 2],
  ]);
  expect(bins[0].low).toBeCloseTo(0.0615, 3);
  expect(bins[0].high).toBeCloseTo(0.7923, 3);
  expect(outcomeScores([{ odds: 0.5, injured: true }]).skill).toBeNull();
});
