import { describe, expect, it } from 'vitest';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import type { RegionRow } from '../../src/schema/region.ts';
import { boxAround, mapMarks, nearestTo, placeStations } from '../../web/src/region/mapMarks.ts';
import { markOf } from '../../web/src/region/measures.ts';
import { readBox, readStates } from '../../web/src/region/readWhere.ts';
import { leftOut, REGION, regionFrom, regionOf } from '../../web/src/region/regionAddress.ts';
import { regionFinding } from '../../web/src/region/regionWords.ts';
import { MOST_SOILS, readSoils, saySoils } from '../../web/src/region/stationSoils.ts';
import { typedDates } from '../../web/src/units/dates.ts';

const rain = (percentOfNormal: number) => ({
  fromDate: '2026-06-01',
  throughDate: '2026-08-31',
  mm: 100,
  normalMm: 10_000 / percentOfNormal,
  percentOfNormal,
  years: 30,
});
const station = (id: string, longitudeDeg: number | null, odds: number | null, percentOfNormal = 100) =>
  ({
    ...{ station: id, name: id, latitudeDeg: 47, longitudeDeg, elevationM: 900, invented: false },
    ...{ soilClass: 'loam', firstDate: '1980-01-01', lastDate: '2026-09-30', rainPercent: 60 },
    temperatureStation: null,
    figures:
      odds === null
        ? null
        : {
            ...{ years: 40, labelDate: '2026-12-14', oddsNormal: odds, oddsNow: odds },
            ...{
              oddsRange: { low: 0, high: 1 },
              labelTooShortShare: 0.5,
              clearDate: null,
              daysAfterLabel: null,
            },
            ...{ summerRain: rain(percentOfNormal), warmRain: null, counted: [] },
          },
    code: odds === null ? 'TOO_FEW_YEARS' : null,
    reason: odds === null ? 'Too few.' : null,
    notNow: null,
  }) satisfies RegionRow;

describe('marks of a region', () => {
  it('tell the sides of limit and normal by shape, and a silent station by its hatching', () => {
    const shape = (row: RegionRow, measure: Parameters<typeof markOf>[1]) => markOf(row, measure, 0.1).shape;
    expect(shape(station('A', -110, 0.1), 'now')).toBe('circle');
    expect(shape(station('A', -110, 0.11), 'now')).toBe('diamond');
    expect(shape(station('A', -110, 0.5, 74), 'summer')).toBe('triangle');
    expect(shape(station('A', -110, 0.5, 75), 'summer')).toBe('ring');
    expect(shape(station('A', -110, 0.5, 126), 'summer')).toBe('square');
    expect(shape(station('A', -110, 0.5), 'warm')).toBe('cross');
    expect(markOf(station('A', -110, null), 'now', 0.1)).toMatchObject({
      shape: 'hatched',
      fill: 'url(#hatch)',
    });
  });

  it('draw thousands of stations as a few paths, those of higher odds last', () => {
    const rows = Array.from({ length: 4000 }, (_, index) =>
      station(`S${index}`, -120 + (index % 40), (index % 100) / 100),
    );
    const { placed, off } = placeStations([...rows, station('NOWHERE', null, 0.2)]);
    expect([placed.length, off]).toEqual([4000, 1]);
    const { groups, arcs } = mapMarks(placed, 'now', 0.1, 1);
    expect(groups.length).toBeLessThan(9);
    expect(groups.at(-1)?.fill).toBe('var(--odds-6)');
    expect(groups.reduce((sum, { path }) => sum + path.split('M').length - 1, 0)).toBe(4000);
    expect(arcs.split('M').length - 1).toBe(4000);
    expect(arcs).not.toMatch(/NaN|Infinity/);
  });

  it('lie inside what is looked at, and the nearest within reach is found', () => {
    const { placed } = placeStations([station('W', -112, 0.1), station('E', -104, 0.6)]);
    const { left, top, width, height } = boxAround(placed);
    for (const { x, y } of placed) {
      expect(x).toBeGreaterThan(left);
      expect(x).toBeLessThan(left + width);
      expect(y).toBeGreaterThan(top);
      expect(y).toBeLessThan(top + height);
    }
    expect(nearestTo(placed, placed[1].x + 3, placed[1].y, 5)?.row.station).toBe('E');
    expect(nearestTo(placed, placed[1].x + 9, placed[1].y, 5)).toBeNull();
  });
});

describe('where a region is asked', () => {
  it('is read from letters and numbers, with a reason where it cannot be', () => {
    expect(readStates(' mt, ND mt ')).toEqual({ value: ['MT', 'ND'] });
    expect(readStates('')).toEqual({ value: null });
    expect(readStates('Montana')).toMatchObject({ problem: expect.stringContaining('MONTANA') });
    expect(readBox('-112, 45, -104, 49')).toEqual({
      value: { west: -112, south: 45, east: -104, north: 49 },
    });
    for (const text of ['-112, 45', 'a, b, c, d', '-190, 45, -104, 49', '-112, 49, -104, 45']) {
      expect(readBox(text)).toHaveProperty('problem');
    }
  });

  it('stands in the address beside the question, and comes back out of it', () => {
    // An address leaves out what stands at its default.
    const { oddsLimit: _, ...question } = demoQuestion;
    const asked = {
      ...regionFrom(question),
      states: ['MT', 'ND'],
      box: { west: -112, south: 45.5, east: -104, north: 49 },
      soils: { USC00241044: 'silt loam', 'A B': 'clay' } as const,
      show: 'summer' as const,
      pick: 'USC00241044',
    };
    const search = REGION.encode(asked, 'metric');
    expect(REGION.decode(search)).toMatchObject({ value: asked, units: 'metric', problem: null });
  });

  it('takes a column of soils with or without heads, and refuses what is none', () => {
    const soils = { GEN1: 'silt loam', GEN2: 'clay' } as const;
    for (const text of ['station, soil\nGEN1, silt loam\n\nGEN2,Clay', 'GEN1;silt loam\r\nGEN2\tclay\n'])
      expect(readSoils(text)).toEqual({ value: soils });
    expect(saySoils(soils)).toBe('GEN1, silt loam\nGEN2, clay');
    expect(readSoils(' \n')).toEqual({ value: null });
    const many = Array.from({ length: MOST_SOILS + 1 }, (_, index) => `S${index},loam`).join('\n');
    for (const wrong of ['GEN1', 'GEN1, mud', ', loam', 'GEN1, loam, 3', 'GEN1,loam\nGEN1,clay', many])
      expect(readSoils(wrong)).toHaveProperty('problem');
    const asked = { ...regionFrom(demoQuestion), soils: { GEN1: 'clay' } as const };
    expect(regionOf(asked).soilByStation).toEqual({ GEN1: 'clay' });
    expect(regionOf(regionFrom(demoQuestion))).not.toHaveProperty('soilByStation');
  });

  it('leaves out what belongs to one field, and says so', () => {
    const question = { ...demoQuestion, gauge: [{ date: '2026-09-01', rainMm: 5 }], labelEntry: 'mine' };
    const posted = regionOf(regionFrom(question));
    expect(posted).not.toHaveProperty('station');
    expect(posted).not.toHaveProperty('gauge');
    expect(posted).toMatchObject({ residual: demoQuestion.residual, plantOn: demoQuestion.plantOn });
    expect(leftOut(question)).toEqual(['own gauge readings', 'your own label entry']);
  });
});

describe('the sentence of a region', () => {
  const head = (...odds: number[]) => {
    const question = { ...demoQuestion, oddsLimit: 0.1, appliedOn: '2026-08-14', plantOn: '2027-05-10' };
    const start = { stations: odds.length, residual: 'flumioxazin', crop: 'lentil', question };
    const rows = odds.map((one, index) => station(`S${index}`, -110, one));
    return regionFinding({ start, rows, asked: '' } as never, true, typedDates('us')).head;
  };

  it('counts the stations over the limit, and speaks of one by itself', () => {
    expect(head(0.3, 0.2, 0.05)).toMatch(/^At 2 of 3 stations the odds .+ are over your limit of 2 in 20/);
    expect(head(0.05, 0.02)).toMatch(/^At all 2 stations the odds .+ are within your limit/);
    expect(head(0.05)).toMatch(/^At the one station that answers the odds .+ are within your limit/);
    expect(head(0.3)).toMatch(/^At the one station that answers the odds .+ are over your limit/);
  });
});
