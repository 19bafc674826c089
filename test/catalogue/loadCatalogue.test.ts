import { describe, expect, it } from 'vitest';
import type { CatalogueTexts } from '../../src/catalogue/catalogueFiles.ts';
import { loadCatalogue } from '../../src/catalogue/loadCatalogue.ts';
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
    expect(catalogue.intervals.find(({ rowId }) => rowId === 8)?.partners).toHaveLength(3);
    const row = catalogue.intervals.find(({ rowId }) => rowId === 212);
    expect(row).toMatchObject({
      minMonths: 28,
      maxMonths: 28,
      minDays: null,
      crop: 'winter wheat',
      variety: 'ordinary',
      country: 'US',
    });
    expect(catalogue.crops.find(({ name }) => name === 'vetch')?.sensitivity).toBeNull();
  });

  it('names file, line and column of a number that is none', () => {
    const line = lineOf('actives', 'flumioxazin,');
    expectFault(
      changed(
        'actives',
        'flumioxazin,,14,from memory,M05,yes,18,',
        'flumioxazin,,14,from memory,M05,yes,18 d,',
      ),
      `actives.csv, line ${line}, column half_life_typical_days:`,
      /the cell holds "18 d"/,
    );
  });

  it('refuses a typical half-life outside its span', () => {
    expectFault(
      changed('actives', 'yes,18,from memory,M02,8,seen,S44', 'yes,18,from memory,M02,20,seen,S44'),
      `actives.csv, line ${lineOf('actives', 'flumioxazin,')}, column half_life_low_days:`,
      /above the typical/,
    );
  });

  it('refuses a mark that is none, a missing mark and a missing source', () => {
    const line = lineOf('crops', 'canola,');
    expectFault(
      changed('crops', 'by sulfonylureas",seen,S11;S06', 'by sulfonylureas",read,S11;S06'),
      `crops.csv, line ${line}, column sensitivity_mark:`,
      /"read"/,
    );
    expectFault(
      changed('crops', 'by sulfonylureas",seen,S11;S06', 'by sulfonylureas",seen,'),
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
      /"lentel" is not in crops.csv or crop-groups.csv/,
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
      changed('crops', 'corn,Zea mays,maize;grain corn', 'corn,Zea mays,Sugar-Beet;grain corn'),
      `crops.csv, line ${lineOf('crops', 'sugarbeet,')}, column name:`,
      new RegExp(`"sugar beet" stands on line ${line} already`),
    );
    expectFault(changed('intervals', '\n403,', '\n402,'), 'column row_id:', /"402" stands on line/);
  });

  it('refuses an interval whose ends are the wrong way round, or that counts in two units', () => {
    const at = `intervals.csv, line ${lineOf('intervals', '403,')}, column`;
    expectFault(
      changed(
        'intervals',
        '403,flumioxazin,,lentil,lentil,label,3,4,,',
        '403,flumioxazin,,lentil,lentil,label,4,3,,',
      ),
      `${at} min_months:`,
      /below the shortest/,
    );
    expectFault(
      changed(
        'intervals',
        '403,flumioxazin,,lentil,lentil,label,3,4,,',
        '403,flumioxazin,,lentil,lentil,label,3,4,90,',
      ),
      `${at} min_days:`,
      /not in both/,
    );
  });

  it('refuses a figure without mark, and a mark without a figure', () => {
    const line = lineOf('actives', 'flumioxazin,');
    expectFault(
      changed('actives', 'flumioxazin,,14,from memory,M05,', 'flumioxazin,,14,,,'),
      `actives.csv, line ${line}, column mode_of_action_group:`,
      /its mark/,
    );
    expectFault(
      changed('actives', 'yes,18,from memory,M02,8,seen,S44', 'yes,18,from memory,M02,,seen,S44'),
      `actives.csv, line ${line}, column half_life_low_days:`,
      /its mark/,
    );
  });

  it('works out a missing typical half-life from both ends of the range, and refuses one end alone', () => {
    const quinclorac = catalogue.actives.find(({ isoName }) => isoName === 'quinclorac');
    expect(quinclorac?.fieldHalfLifeDays).toEqual({ typical: 56.3, low: 18, high: 176 });
    expect(quinclorac?.provenance.halfLifeTypical).toEqual({ mark: 'computed', sources: ['M04'] });
    expect(Math.abs(56.3 - Math.sqrt(18 * 176))).toBeLessThanOrEqual(0.05);
    expect(quinclorac?.cautions.at(-1)).toMatch(/geometric mean/);
    const told = catalogue.actives.filter(({ cautions }) =>
      cautions.some((text) => text.includes('geometric')),
    );
    expect(told.map(({ isoName }) => isoName)).toEqual([
      'propoxycarbazone-sodium',
      'prosulfuron',
      'quinclorac',
      'sulfosulfuron',
    ]);
    expectFault(
      changed('actives', 'yes,,,,18,from memory,M04,176,from memory,M04', 'yes,,,,18,from memory,M04,,,'),
      `actives.csv, line ${lineOf('actives', 'quinclorac,')}, column half_life_typical_days:`,
      /both ends/,
    );
    expect(catalogue.actives.find(({ isoName }) => isoName === 'acetochlor')?.fieldHalfLifeDays).toBeNull();
  });

  it('names file, line and field of a fault in a YAML file', () => {
    const at = (file: 'clauses' | 'phResponses', part: string) =>
      texts[file].slice(0, texts[file].indexOf(part)).split('\n').length;
    expectFault(
      changed('clauses', 'minMm: 711', 'minMm: -711'),
      `clauses.yaml, line ${at('clauses', 'minMm: 711')}, column clauses.0.minMm:`,
      /./,
    );
    expectFault(
      changed('clauses', 'rows: [76]', 'rows: [7600]'),
      `clauses.yaml, line ${at('clauses', 'rows: [76]')}, column rows:`,
      /"7600" is not in intervals.csv/,
    );
    expectFault(
      changed('phResponses', 'factorPerUnit: 3.24', 'factorPerUnit: steep'),
      `ph-responses.yaml, line ${at('phResponses', 'factorPerUnit: 3.24')}, column factorPerUnit:`,
      /number/,
    );
    expectFault(
      changed('phResponses', 'active: prosulfuron', 'active: prosulfurone'),
      `ph-responses.yaml, line ${at('phResponses', 'active: prosulfuron')}, column active:`,
      /is not in actives.csv/,
    );
    expectFault(changed('phResponses', 'sources: [S134]', 'sources: [S999]'), 'column sources:', /"S999"/);
    expectFault(
      changed('phResponses', '- { fromPh: 6.4, toPh: 7.0', '- { fromPh: 6.5, toPh: 7.0'),
      'column steps:',
      /gap/,
    );
    expectFault({ ...texts, clauses: 'rows: [' }, 'clauses.yaml, line 1', /./);
  });

  it('refuses a line cut short, another header and an empty file', () => {
    const line = lineOf('crops', 'canola,');
    expectFault(
      changed('crops', 'seed,no,no,from memory,M06\nchickpea,', 'seed\nchickpea,'),
      `crops.csv, line ${line}, column (whole line):`,
      /Invalid Record Length/,
    );
    expectFault(
      changed('crops', 'name,botanical_name,aliases,kind', 'name,botanical_name,kind,aliases'),
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
