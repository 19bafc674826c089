import { describe, expect, it } from 'vitest';
import type { JudgedClause } from '../../src/analysis/labelConditions.ts';
import { type JudgedLine, passedOver } from '../../src/analysis/passedOver.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { type Clause, clauseSchema } from '../../src/schema/clauses.ts';

const APPLIED = parseIsoDate('2021-06-01');
const months = (n: number) => ({ months: n, days: 0 });

/** A line of `n` months whose conditions stand as told. */
function line(
  n: number,
  conditions: [object, JudgedClause['state']][],
  over: Partial<JudgedLine> = {},
): JudgedLine {
  const clauses = conditions.map(
    ([clause]): Clause => clauseSchema.parse({ ifNot: 'not stated', ...clause }),
  );
  const given = { interval: months(n), shortest: months(n), clauses };
  const judged = clauses.map(
    (clause, index): JudgedClause => ({
      clause,
      state: conditions[index][1],
      amountMm: null,
      odds: null,
      range: null,
      fieldValue: null,
      requiredMm: null,
      byDay: null,
      intervalIfMet: given.interval,
      intervalIfNot:
        typeof clause.ifNot === 'object' && 'months' in clause.ifNot ? months(clause.ifNot.months) : null,
      waitsUntilDay: null,
      waitsForever: false,
      endsAfterPlanting: false,
    }),
  );
  const label = { interval: given.interval, notBefore: null, labelDay: APPLIED, judged };
  return { source: 'S01', hasLength: true, given, label, ...over };
}

const out = (...lines: JudgedLine[]) => [...passedOver(lines, APPLIED)];
const low = { kind: 'rate', toGramsPerHa: 90 };
const high = { kind: 'rate', fromGramsPerHa: 90, toGramsPerHa: 150 };
const zone = { kind: 'zone', words: 'an invented valley' };

describe('lines of one label for different fields', () => {
  it('give way to the one whose own conditions are met', () => {
    expect(out(line(9, [[low, 'met']]), line(12, [[high, 'not met']]))).toEqual([1]);
    expect(out(line(9, [[low, 'not met']]), line(12, [[high, 'met']]))).toEqual([0]);
  });

  it('all stay while it is open which one it is, or where none fits', () => {
    expect(out(line(9, [[low, 'open']]), line(12, [[high, 'open']]))).toEqual([]);
    expect(out(line(9, [[low, 'not met']]), line(12, [[high, 'not met']]))).toEqual([]);
    expect(
      out(
        line(9, [
          [low, 'met'],
          [{ kind: 'soilPh', below: 7 }, 'open'],
        ]),
        line(12, [[high, 'not met']]),
      ),
    ).toEqual([]);
  });

  it('stay where the other is of another source, has no length, or is told apart by something else', () => {
    const failed = line(12, [[high, 'not met']]);
    expect(out(line(9, [[low, 'met']], { source: 'S02' }), failed)).toEqual([]);
    expect(out(line(9, [[low, 'met']], { hasLength: false }), failed)).toEqual([]);
    expect(out(line(9, [[{ kind: 'soilPh', below: 7 }, 'met']]), failed)).toEqual([]);
    expect(out(line(9, []), failed)).toEqual([]);
  });
});

describe('the line that holds where another’s conditions fail', () => {
  const ph = { kind: 'soilPh', atLeast: 6.2, ifNot: { months: 28 } };
  const water = {
    kind: 'water',
    minMm: 406,
    counts: 'rain and irrigation',
    window: { from: 'application', to: 'interval end' },
    ifNot: { months: 28 },
  };

  it('gives way once they are all met, though both share an open zone', () => {
    expect(
      out(
        line(9, [
          [water, 'met'],
          [ph, 'met'],
          [zone, 'open'],
        ]),
        line(28, [[zone, 'open']]),
      ),
    ).toEqual([1]);
  });

  it('stays while one is open, has failed, or the zone is the other’s alone', () => {
    expect(
      out(
        line(9, [
          [water, 'open'],
          [ph, 'met'],
          [zone, 'open'],
        ]),
        line(28, [[zone, 'open']]),
      ),
    ).toEqual([]);
    expect(
      out(
        line(9, [
          [water, 'met'],
          [ph, 'not met'],
        ]),
        line(28, []),
      ),
    ).toEqual([]);
    expect(
      out(
        line(9, [
          [water, 'met'],
          [zone, 'open'],
        ]),
        line(28, []),
      ),
    ).toEqual([]);
  });

  it('is told by its length, and never takes the place of the other', () => {
    expect(out(line(9, [[water, 'met']]), line(26, []))).toEqual([]);
    expect(out(line(28, [[water, 'met']]), line(28, []))).toEqual([]);
  });
});
