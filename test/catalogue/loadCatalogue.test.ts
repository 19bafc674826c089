import { describe, expect, it } from 'vitest';
import { type CatalogueTexts, loadCatalogue } from '../../src/catalogue/loadCatalogue.ts';
import { readDataFolder } from '../../src/catalogue/readDataFolder.ts';
import { catalogue, dataPath, texts } from './loaded.ts';

/** The catalogue's texts with one thing replaced; fails where it does not stand there exactly once. */
function changed(file: keyof CatalogueTexts, from: string, to: string): CatalogueTexts {
  expect(texts[file].split(from)).toHaveLength(2);
  return { ...texts, [file]: texts[file].replace(from, to) };
}

const lineOf = (file: keyof CatalogueTexts, start: string): number =>
  texts[file].split('\n').findIndex((line) => line.startsWith(start)) + 1;

function expectFault(faulty: CatalogueTexts, place: string, fault: RegExp): void {
  expect(() => loadCatalogue(faulty)).toThrow(
    expect.objectContaining({
      code: 'CATALOGUE_FAULTY',
      kind: 'source-failed',
      message: expect.stringMatching(fault),
      hint: expect.stringContaining('README'),
    }),
  );
  expect(() => loadCatalogue(faulty)).toThrow(place);
}

describe('loadCatalogue', () => {
  it('reads cells into records: numbers, lists, empty cells', () => {
    const flumioxazin = catalogue.actives.find(({ isoName }) => isoName === 'flumioxazin');
    expect(flumioxazin).toMatchObject({
      group: 14,
      fieldHalfLifeDays: { typical: 18, low: 8, high: 49 },
      q10: 2.33,
      moistureExponent: null,
      provenance: {
        halfLifeTypical: { mark: 'from memory', sources: ['M02'] },
        q10: { mark: 'computed', sources: ['S43'] },
        moistureExponent: null,
      },
    });
    expect(flumioxazin?.cautions).toHaveLength(2);
    const row = catalogue.intervals.find(({ rowId }) => rowId === 212);
    expect(row).toMatchObject({
      minMonths: 28,
      maxMonths: 28,
      minDays: null,
      crop: 'wheat',
      cropOnSource: 'winter wheat',
    });
  });

  it('names file, line and column of a number that is none', () => {
    const line = lineOf('actives', 'flumioxazin,');
    expectFault(
      changed('actives', 'flumioxazin,,14,from memory,M05,18,', 'flumioxazin,,14,from memory,M05,18 d,'),
      `actives.csv, line ${line}, column half_life_typical_days:`,
      /the cell holds "18 d"/,
    );
  });

  it('refuses a typical half-life outside its span', () => {
    expectFault(
      changed('actives', 'M05,18,from memory,M02,8,49,', 'M05,18,from memory,M02,20,49,'),
      `actives.csv, line ${lineOf('actives', 'flumioxazin,')}, column half_life_low_days:`,
      /above the typical/,
    );
  });

  it('refuses a mark that is none, a missing mark and a missing source', () => {
    const line = lineOf('crops', 'canola,');
    expectFault(
      changed('crops', 'imidazolinones,seen,S11\nsugar', 'imidazolinones,read,S11\nsugar'),
      `crops.csv, line ${line}, column sensitivity_mark:`,
      /"read"/,
    );
    expectFault(
      changed('crops', 'imidazolinones,seen,S11\nsugar', 'imidazolinones,seen,\nsugar'),
      `crops.csv, line ${line}, column sensitivity_sources:`,
      /""/,
    );
    expectFault(
      changed('actives', '2.33,computed,S43', '2.33,,'),
      `actives.csv, line ${lineOf('actives', 'flumioxazin,')}, column q10:`,
      /its mark/,
    );
  });

  it('refuses references that lead nowhere', () => {
    const line = lineOf('intervals', '403,');
    const row = texts.intervals.split('\n')[line - 1];
    const change = (to: string) => changed('intervals', row, to);
    expectFault(
      change(row.replace(',lentil,lentil,', ',lentel,lentil,')),
      `intervals.csv, line ${line}, column crop:`,
      /"lentel" is not in crops.csv/,
    );
    expectFault(
      change(row.replace('403,flumioxazin', '403,flumioxazine')),
      `line ${line}, column active:`,
      /is not in actives.csv/,
    );
    expectFault(
      change(row.replace(',M03,', ',M77,')),
      `line ${line}, column source:`,
      /"M77" is not in sources.csv/,
    );
    expectFault(
      changed('actives', '2.33,computed,S43', '2.33,computed,S999'),
      'column q10_sources:',
      /"S999" is not in sources.csv/,
    );
  });

  it('refuses a name, alias or number that stands twice', () => {
    const line = lineOf('crops', 'corn,');
    expectFault(
      changed('crops', 'corn,maize;grain corn,', 'corn,Sugar-Beet;grain corn,'),
      `crops.csv, line ${line}, column name:`,
      new RegExp(`"Sugar-Beet" stands on line ${lineOf('crops', 'sugarbeet,')} already`),
    );
    expectFault(changed('intervals', '\n403,', '\n402,'), 'column row_id:', /"402" stands on line/);
  });

  it('refuses an interval whose ends are the wrong way round, or that counts in two units', () => {
    const at = `intervals.csv, line ${lineOf('intervals', '403,')}, column`;
    expectFault(
      changed(
        'intervals',
        '403,flumioxazin,lentil,lentil,label,3,4,,',
        '403,flumioxazin,lentil,lentil,label,4,3,,',
      ),
      `${at} min_months:`,
      /below the shortest/,
    );
    expectFault(
      changed(
        'intervals',
        '403,flumioxazin,lentil,lentil,label,3,4,,',
        '403,flumioxazin,lentil,lentil,label,3,4,90,',
      ),
      `${at} min_days:`,
      /not in both/,
    );
  });

  it('refuses a line cut short, another header and an empty file', () => {
    const line = lineOf('crops', 'canola,');
    expectFault(
      changed('crops', 'imidazolinones,seen,S11\nsugar', 'imidazolinones\nsugar'),
      `crops.csv, line ${line}, column (whole line):`,
      /Invalid Record Length/,
    );
    expectFault(
      changed('crops', 'name,aliases,kind', 'name,kind,aliases'),
      'crops.csv, line 1, column aliases:',
      /has "kind" in its place/,
    );
    expectFault({ ...texts, sources: '' }, 'sources.csv, line 1, column id:', /empty/);
  });

  it('says which file is missing', () => {
    expect(() => readDataFolder(`${dataPath}nowhere`)).toThrow(
      expect.objectContaining({ code: 'FILE_NOT_FOUND', message: expect.stringContaining('actives.csv') }),
    );
    expect(readDataFolder(dataPath)).toEqual(texts);
  });
});
