import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { sayIn } from '../../src/app/say.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import type { Wording } from '../../src/schema/wording.ts';
import { demoDeps } from './demoDeps.ts';

describe('amounts and dates in sentences', () => {
  it('follow the units, and dates what is asked for apart', () => {
    expect(sayIn().wording).toEqual({ units: 'us', dates: 'us' });
    expect(sayIn({ units: 'metric' }).wording).toEqual({ units: 'metric', dates: 'iso' });
    expect(sayIn({ dates: 'iso' }).wording).toEqual({ units: 'us', dates: 'iso' });
    expect([sayIn().water(25.4), sayIn({ units: 'metric' }).water(25.4)]).toEqual(['1.0 in', '25 mm']);
    expect(sayIn({ units: 'metric', dates: 'us' }).dates.full('2027-05-10')).toBe('May 10, 2027');
  });

  it('turns the rates within words, and names the unit once', () => {
    const [us, metric] = [sayIn(), sayIn({ units: 'metric' })];
    expect(us.ratesIn('35-140')).toBe('0.5-2 oz/ac');
    expect(metric.ratesIn('35-140')).toBe('35-140 g/ha');
    expect(us.ratesIn('140 and over')).toBe('2 oz/ac and over');
    expect(us.ratesIn('lower dose step')).toBe('lower dose step');
  });

  it('change no figure of an answer and no name of a condition, and give one unit only', async () => {
    const question = { ...demoQuestion, irrigation: [{ date: '2026-09-05', mm: 12.7 }] };
    const ask = (wording: Wording) => answerField(question, { ...demoDeps, wording });
    const [us, metric, mixed] = [await ask({}), await ask({ units: 'metric' }), await ask({ dates: 'iso' })];
    for (const other of [metric, mixed]) {
      expect(other.oddsAtPlanting).toBe(us.oddsAtPlanting);
      expect([other.labelDate, other.clearDate]).toEqual([us.labelDate, us.clearDate]);
      expect(other.conditions.map(({ name }) => name)).toEqual(us.conditions.map(({ name }) => name));
    }
    expect(us.conditions.map(({ text }) => text).join(' ')).toMatch(/At least 1\.0 in of rain/);
    expect(metric.conditions.map(({ text }) => text).join(' ')).toMatch(/At least 25 mm of rain/);
    const said = ({ sentence, advice, cautions, conditions }: typeof us) =>
      [sentence, advice, ...[...cautions, ...conditions].map(({ text }) => text)].join(' ');
    expect(said(us)).not.toMatch(/\d mm\b|\d{4}-\d{2}-\d{2}/);
    expect(said(metric)).not.toMatch(/\d in\b(?! 20)|(?:May|December|June|November) \d/);
    expect(said(mixed)).toMatch(/\d\.\d in\b/);
    expect(said(mixed)).toContain('planted 2027-05-10');
  });
});
