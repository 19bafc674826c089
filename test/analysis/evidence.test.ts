import { beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '../../src/analysis/evidence.ts';
import { seasonOdds } from '../../src/analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../../src/analysis/seasonQuestion.ts';
import type { StationClimate } from '../../src/analysis/stationClimate.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { climateOf, plainApplication, plainQuestion } from '../cases/seasonOf.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { climateOfSeries, inventedSeries } from './inventedWeather.ts';

const asOfDay = parseIsoDate('2021-03-01');
const soilTest = (fractionLeft: number, day = asOfDay): Finding => ({ kind: 'soil test', day, fractionLeft });
const bioassay = (injured: boolean, day = asOfDay): Finding => ({ kind: 'bioassay', day, injured });

/** Odds after findings by a coarse midpoint sum over soils, year by year, from the season's own sums alone. */
function byHand(
  climate: StationClimate,
  question: SeasonQuestion,
  findings: readonly Finding[],
  cells = 400,
): number {
  const odds = seasonOdds(climate, { ...question, evidence: [] });
  const [{ application, logMargin, traces }] = odds.judged;
  const rate = Math.LN2 / (application.halfLife * application.siteFactor);
  const left = (z: number, W: number) => application.load * Math.exp(-rate * Math.exp(0.35 * z) * W);
  const posteriors = traces.map((trace) => {
    const W = (day: number) => trace.sums[trace.base + day - odds.firstDay] - trace.sums[trace.base];
    const atPlanting = W(question.plantDay);
    let harmful = 0;
    let total = 0;
    for (let cell = 0; cell < cells; cell++) {
      const z = -5 + ((cell + 0.5) * 10) / cells;
      let weight = Math.exp(-0.5 * z * z);
      for (const finding of findings) {
        const residue = left(z, W(finding.day));
        if (finding.kind === 'soil test') {
          const off = Math.log(finding.fractionLeft / residue);
          weight *= Math.exp((-off * off) / (2 * Math.log(1.09)));
        } else {
          const injured = 0.1 + 0.8 * phi(Math.log(residue * Math.exp(logMargin)) / 0.35);
          weight *= finding.injured ? injured : 1 - injured;
        }
      }
      total += weight;
      if (left(z, atPlanting) * Math.exp(logMargin) > 1) harmful += weight;
    }
    return harmful / total;
  });
  return posteriors.reduce((sum, one) => sum + one, 0) / posteriors.length;
}

/** Φ by the error function's series (Abramowitz and Stegun 7.1.26, 1.5e-7). */
function phi(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const upper = 0.5 * poly * Math.exp(-x * x);
  return z < 0 ? upper : 1 - upper;
}

describeWithRecords('evidence, the 9-month row as of 2021-03-01', (folder) => {
  let climate: StationClimate;
  const question = {
    ...plainQuestion,
    applications: [{ ...plainApplication, interval: { months: 9, days: 0 } }],
    asOfDay,
  };
  const oddsWith = (...evidence: Finding[]) => seasonOdds(climate, { ...question, evidence });
  beforeAll(async () => {
    climate = await climateOf(`${folder}/derived`, 'USC00241044', 45.662);
  });

  it('moves the odds the way it points', () => {
    const before = oddsWith().oddsAtPlanting;
    expect(Math.abs(before - 0.5201)).toBeLessThan(0.002);
    expect(oddsWith(soilTest(0.15)).oddsAtPlanting).toBeLessThan(before);
    expect(oddsWith(soilTest(0.95)).oddsAtPlanting).toBeGreaterThan(before);
    expect(oddsWith(bioassay(false)).oddsAtPlanting).toBeLessThan(before);
    expect(oddsWith(bioassay(true)).oddsAtPlanting).toBeGreaterThan(before);
  });

  it('agrees with an independent coarse integration over soils', () => {
    const cases = [
      [soilTest(0.4)],
      [soilTest(0.15)],
      [bioassay(true)],
      [bioassay(false)],
      [soilTest(0.5, parseIsoDate('2020-11-01')), bioassay(true), bioassay(false)],
    ];
    for (const findings of cases) {
      const got = oddsWith(...findings).oddsAtPlanting;
      expect(Math.abs(got - byHand(climate, question, findings))).toBeLessThan(0.004);
    }
  });

  it('adds up over repeats, whatever their order, and keeps the steps', () => {
    const once = oddsWith(bioassay(false));
    const twice = oddsWith(bioassay(false), bioassay(false));
    expect(twice.oddsAtPlanting).toBeLessThan(once.oddsAtPlanting);
    expect(twice.oddsByEvidence).toHaveLength(3);
    expect(twice.oddsByEvidence[1]).toBeCloseTo(once.oddsAtPlanting, 12);
    const early = soilTest(0.6, parseIsoDate('2020-12-01'));
    const one = oddsWith(early, bioassay(true));
    const other = oddsWith(bioassay(true), early);
    expect(other.oddsByEvidence).toEqual(one.oddsByEvidence);
    expect(one.oddsByEvidence[2]).toBe(one.oddsAtPlanting);
  });

  it('moves the whole curve, the clear date with it, and leaves demand alone', () => {
    const before = oddsWith();
    const after = oddsWith(soilTest(0.2));
    expect(after.demands).toEqual(before.demands);
    expect(after.clearOffset ?? 0).toBeLessThan(before.clearOffset ?? 0);
    expect(after.curve.odds[after.plantOffset]).toBeCloseTo(after.oddsAtPlanting, 14);
  });

  it('refuses what was found before spraying, after the last observed day, or while planning', () => {
    const early = () => oddsWith(bioassay(true, plainApplication.appliedDay - 1));
    const late = () => oddsWith(bioassay(true, asOfDay + 2));
    const planning = () =>
      seasonOdds(climate, { ...question, asOfDay: undefined, evidence: [bioassay(true)] });
    expect(early).toThrow(
      expect.objectContaining({
        code: 'EVIDENCE_DATE',
        message: expect.stringContaining('before the application'),
      }),
    );
    expect(late).toThrow(expect.objectContaining({ code: 'EVIDENCE_DATE' }));
    expect(planning).toThrow(expect.objectContaining({ code: 'EVIDENCE_DATE' }));
  });
});

describe('evidence, several treatments', () => {
  const climate = climateOfSeries(inventedSeries({ seed: 3, wetShare: 0.25, wetDayMm: 6, meanTempC: 8 }));
  const appliedDay = parseIsoDate('2010-08-10');
  const day = parseIsoDate('2011-03-01');
  const application = { ...plainApplication, appliedDay, residual: 'first', group: '2' };
  const question = {
    ...plainQuestion,
    base: {},
    applications: [application],
    plantDay: parseIsoDate('2011-05-10'),
    asOfDay: day,
  };

  it('a soil test speaks of the residual it looked for, not of others in the soil', () => {
    const second = { ...application, residual: 'second', appliedDay: appliedDay + 20, load: 3 };
    const both = { ...question, applications: [application, second] };
    const low: Finding = { kind: 'soil test', day, fractionLeft: 0.2 };
    const named = seasonOdds(climate, { ...both, evidence: [{ ...low, residual: 'first' }] });
    const summed = seasonOdds(climate, { ...both, evidence: [low] });
    // A fifth of one dose where four were sprayed tells of fast soil; of the first alone it tells less.
    expect(summed.oddsAtPlanting).toBeLessThan(named.oddsAtPlanting);
  });

  it('counts for the soil it was taken from where another dose is asked about', () => {
    const evidence: Finding[] = [{ kind: 'bioassay', day, injured: false }];
    const doubled = [{ ...application, load: 2 }];
    const zone = seasonOdds(climate, {
      ...question,
      applications: doubled,
      sampled: [application],
      evidence,
    });
    const naive = seasonOdds(climate, { ...question, applications: doubled, evidence });
    const before = seasonOdds(climate, { ...question, applications: doubled });
    expect(zone.oddsAtPlanting).toBeLessThan(before.oddsAtPlanting);
    // Clean plants at a single dose say less of the soil than clean plants at a double one.
    expect(naive.oddsAtPlanting).toBeLessThan(zone.oddsAtPlanting);
    expect(zone.oddsByEvidence[0]).toBe(before.oddsAtPlanting);
  });

  it('tells nothing where the model has nothing in the soil', () => {
    const later = { ...application, canopyFraction: 1 };
    const dry = { ...question, applications: [later], asOfDay: appliedDay };
    const found = seasonOdds(climate, {
      ...dry,
      evidence: [{ kind: 'soil test', day: appliedDay, fractionLeft: 0.5 }],
    });
    expect(found.oddsAtPlanting).toBeCloseTo(seasonOdds(climate, dry).oddsAtPlanting, 4);
  });
});
