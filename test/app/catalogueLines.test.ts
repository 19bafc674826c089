import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { compareResiduals } from '../../src/app/compareResiduals.ts';
import { cropByDate } from '../../src/app/cropByDate.ts';
import type { Answer } from '../../src/schema/answer.ts';
import { countedDeps, countedQuestion, evenRain, wetRain } from './countedStation.ts';

const wet = countedDeps(wetRain);
const dry = countedDeps(evenRain);
const codesOf = ({ cautions }: Answer) => cautions.map(({ code }) => code);
const cautionOf = ({ cautions }: Answer, code: string) => cautions.find((one) => one.code === code)?.text;

describe('lines of a label by rate', () => {
  const ask = (over: object) =>
    answerField({ ...countedQuestion, residual: 'pyroxasulfone', crop: 'winter wheat', ...over }, wet);

  it('all stay while the rate is not given, and the longest counts', async () => {
    const answer = await ask({});
    expect(answer.inputs.interval.text).toBe('6 months');
    expect(answer.conditions.map(({ state }) => state)).toEqual(['open', 'open', 'open']);
    expect(answer.conditions[0].text).toContain('the rate of active ingredient is not given');
    expect(codesOf(answer)).not.toContain('condition-line');
  });

  it.each([
    [100, '1 month', '4 months, 6 months'],
    [200, '4 months', '1 month, 6 months'],
    [250, '6 months', '1 month, 4 months'],
  ])('at %d g/ha give %s', async (rateGramsPerHa, interval, others) => {
    const answer = await ask({ rateGramsPerHa });
    expect(answer.inputs.interval.text).toBe(interval);
    expect(cautionOf(answer, 'condition-line')).toContain(`passed over: ${others}.`);
    expect(answer.conditions.filter(({ setsDate }) => setsDate).map(({ state }) => state)).toEqual(['met']);
    expect(answer.sentence).toContain(`${interval} as published, not yet confirmed`);
  });

  it('all stay at a rate that none of them names', async () => {
    expect((await ask({ rateGramsPerHa: 150 })).inputs.interval.text).toBe('6 months');
  });

  it('stand beside an interval of the user’s own, and move nothing', async () => {
    const answer = await ask({ interval: '2 months', rateGramsPerHa: 250 });
    expect(answer.labelDate).toBe('2021-08-01');
    expect(answer.conditions.every(({ setsDate }) => !setsDate)).toBe(true);
    expect(codesOf(answer)).toContain('condition-published');
    expect(codesOf(answer)).not.toContain('condition-line');
  });
});

describe('imazamox before winter wheat: 16 inches and pH 6.2 within 9 months, else 28 months', () => {
  const ask = (over: object) =>
    answerField(
      { ...countedQuestion, residual: 'imazamox', crop: 'winter wheat', plantOn: '2022-09-20', ...over },
      wet,
    );
  const nineMonthsOn = { asOf: '2022-03-05' };

  it('takes 28 months while either is open or failed', async () => {
    for (const over of [{}, { soilPh: 6.5 }, nineMonthsOn, { ...nineMonthsOn, soilPh: 6 }]) {
      expect((await ask(over)).labelDate).toBe('2023-10-01');
    }
  });

  it('takes 9 months once both are met', async () => {
    const answer = await ask({ ...nineMonthsOn, soilPh: 6.5 });
    expect(answer.labelDate).toBe('2022-03-01');
    expect(cautionOf(answer, 'condition-line')).toContain('28 months');
    expect(answer.conditions[0]).toMatchObject({
      kind: 'water',
      state: 'met',
      requiredMm: 406.4,
      range: null,
    });
  });

  it('names once the zone that both lines hold in', async () => {
    const zonesOf = ({ conditions }: Answer) => conditions.filter(({ kind }) => kind === 'zone');
    const zones = zonesOf(await ask({}));
    expect(zones).toMatchObject([{ intervalIfMet: '9 months or 28 months', setsDate: true }]);
    expect(zones[0].text).toMatch(
      /Met, the label gives 9 months or 28 months, by its other conditions; the source does not say/,
    );
    const settled = zonesOf(await ask({ ...nineMonthsOn, soilPh: 6.5 }));
    expect(settled).toMatchObject([{ intervalIfMet: '9 months', setsDate: true }]);
    expect(zonesOf(await ask({ crop: 'wheat' })).length).toBe(1);
  });
});

describe('conditions of the catalogue', () => {
  it('treat organic matter of 2 % as given where it is given', async () => {
    const ask = (over: object) =>
      answerField({ ...countedQuestion, residual: 'clopyralid', crop: 'field pea', ...over }, dry);
    const stateOf = ({ conditions }: Answer) =>
      conditions.find(({ kind }) => kind === 'organicMatter')?.state;
    expect(stateOf(await ask({}))).toBe('open');
    expect(stateOf(await ask({ organicMatterPercent: 2 }))).toBe('met');
    expect(stateOf(await ask({ organicMatterPercent: 1.5 }))).toBe('not met');
    expect((await ask({})).oddsAtPlanting).toBe((await ask({ organicMatterPercent: 2 })).oddsAtPlanting);
  });

  it('move the label date to the rain that starts the interval, and tell where the label does not let a crop follow', async () => {
    const dicamba = { ...countedQuestion, residual: 'dicamba', crop: 'soybean', plantOn: '2021-08-01' };
    const inDry = await answerField(dicamba, dry);
    // 3 mm on every third date: 25 mm are there with the ninth, 27 June; 28 days on
    expect(inDry.labelDate).toBe('2021-07-25');
    expect(inDry.advice).toMatch(
      /^The label does not let soybean follow: one of its conditions is not met\./,
    );
    expect(inDry.conditions.find(({ kind }) => kind === 'annualRain')).toMatchObject({
      state: 'not met',
      requiredMm: 635,
    });
    const inWet = await answerField(dicamba, wet);
    expect(inWet.labelDate).toBe('2021-07-07');
    expect(inWet.advice).not.toContain('does not let');
  });

  it('count alike in one answer, in the comparison and in the crop grid', async () => {
    for (const deps of [wet, dry]) {
      const asked = { ...countedQuestion, residual: 'dicamba', crop: 'soybean', plantOn: '2021-08-01' };
      const one = await answerField(asked, deps);
      const { residual, crop, plantOn, ...shared } = asked;
      const compared = await compareResiduals({ ...shared, crop, plantOn }, deps);
      const row = compared.residuals.find((each) => each.residual === residual);
      expect(row).toMatchObject({
        labelDate: one.labelDate,
        oddsAtPlanting: one.oddsAtPlanting,
        clearDate: one.clearDate,
      });
      expect(row?.labelAllows).toBe(deps === wet);
      const grid = await cropByDate(
        { ...shared, residual, crops: [crop], plantFrom: plantOn, plantTo: plantOn },
        deps,
      );
      expect(grid.crops[0]).toMatchObject({ labelDate: one.labelDate, odds: [one.oddsAtPlanting] });
      expect(grid.crops[0].labelForbids ?? false).toBe(deps === dry);
    }
  });

  it('ask for a field bioassay before imazethapyr’s longest waits, and a told one settles it', async () => {
    const sugarbeet = {
      ...countedQuestion,
      residual: 'imazethapyr',
      crop: 'sugarbeet',
      plantOn: '2022-10-01',
    };
    const stateOf = async (injured: boolean) =>
      (
        await answerField(
          { ...sugarbeet, asOf: '2022-09-01', evidence: [{ kind: 'bioassay', on: '2022-08-20', injured }] },
          wet,
        )
      ).conditions[0].state;
    const open = await answerField(sugarbeet, wet);
    expect(open.conditions[0]).toMatchObject({ kind: 'bioassay', state: 'open' });
    expect(cautionOf(open, 'condition-open')).toContain('1 is open');
    expect([await stateOf(false), await stateOf(true)]).toEqual(['met', 'not met']);
  });
});
