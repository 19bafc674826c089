import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { expect, it } from 'vitest';
import type { Active, IntervalRow } from '../../src/schema/catalogue.ts';
import { sharedFolder } from '../sharedFolder.ts';
import { catalogue } from './loaded.ts';

type Cells = Readonly<Record<string, string>>;

const reference = sharedFolder('reference', 'the tables that the catalogue was made from');
const table = (folder: string, file: string): readonly Cells[] =>
  parse(readFileSync(`${folder}/${file}`), { columns: true });

/** Rows that name no active: data/README.md says where they went. */
const GROUP_ROWS = [207, 208, 209, 210, 501];

/** Rows whose condition is stated of the shorter intervals of its source only, while the row holds a longer one or none. */
const CONDITION_OF_OTHER_ROWS = [355, 356, 357, 358, 380, 381, 382, 383, 396];

/** Figures that differ from the table of residuals, as data/README.md says and why. */
const OTHER_FIGURES: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  'S-metolachlor': { dt50_low: 23 },
  clopyralid: { rate: '105-210' },
  picloram: { rate: '24-70' },
  imazamox: { rate: '36-45' },
  chlorsulfuron: { rate: '9-34' },
};

const ISO_NAMES: Readonly<Record<string, string>> = {
  chlorimuron: 'chlorimuron-ethyl',
  cloransulam: 'cloransulam-methyl',
  thifensulfuron: 'thifensulfuron-methyl',
  tribenuron: 'tribenuron-methyl',
};

const numberOf = (cell: string): number | null => (cell === '' ? null : Number(cell));
/** Figures of a rate; multiples of a rate ("3x") are told in words here. */
const numbersIn = (words: string): readonly string[] =>
  words.endsWith('x') ? [] : (words.match(/\d+(\.\d+)?/g) ?? []);
/** A rate without what follows it: how it was converted, or what it did. */
const beforeRemark = (words: string): string => words.replace(/[(;].*/, '');

/** Amounts of rain of a row, whole millimetres as the table has them. */
const rainOf = ({ clauses }: IntervalRow): readonly number[] =>
  clauses.flatMap((clause) =>
    clause.kind === 'water' || clause.kind === 'startingRain' ? [Math.round(clause.minMm)] : [],
  );

/** What a cell on bioassays says of one crop. */
function bioassayOf(cell: string, crop: string): IntervalRow['bioassay'] {
  if (cell.startsWith('option')) return 'instead of the condition';
  const isAsked = cell === 'yes' || (cell === 'yes for broadleaf crops' && crop === 'broadleaf crops');
  return isAsked ? 'yes' : 'no';
}

const KINDS: Readonly<Record<string, IntervalRow['kind']>> = {
  'field study': 'field finding',
  'extension research note': 'field finding',
  'extension profile': 'advice',
  'extension advice': 'advice',
  'advice by agronomists citing labels': 'advice',
  'crop tolerance summary in grain-trade agronomy article': 'advice',
  'registered or recommended use in the crop, by extension': 'advice',
};
/** What a row reports: a label, its summary, or a use in the crop that labels allow, unless its basis is named above. */
const kindOf = (basis: string): IntervalRow['kind'] => KINDS[basis] ?? 'label';

/** Which figures of an active the words before a mark speak of. */
const FIGURES: readonly [words: RegExp, figures: readonly (keyof Active['provenance'])[]][] = [
  [/^koc/i, ['koc']],
  [/^(dt50_)?typical/, ['halfLifeTypical']],
  [/^(dt50_)?low/, ['halfLifeLow']],
  [/^(dt50_)?high/, ['halfLifeHigh']],
  [/^(dt50 )?range/, ['halfLifeLow', 'halfLifeHigh']],
  [/^rate/, ['typicalRate']],
  [/^(numbers|all)/, ['halfLifeTypical', 'halfLifeLow', 'halfLifeHigh', 'koc', 'typicalRate', 'topRate']],
];
const figuresIn = (words: string): (keyof Active['provenance'])[] =>
  words
    .split(',')
    .flatMap((word) =>
      FIGURES.filter(([pattern]) => pattern.test(word.trim())).flatMap(([, figures]) => figures),
    );

const activeOf = (cell: string): Active => {
  const name = cell.replace(/ \(.*/, '');
  const active = catalogue.actives.find(({ isoName }) => isoName === name);
  if (active === undefined) throw new Error(`${name} is not in the catalogue`);
  return active;
};

reference.describeWith('the catalogue beside the tables it was made from', (folder) => {
  const rows = table(folder, 'rotation-intervals.csv');
  const byId = new Map(catalogue.intervals.map((row) => [row.rowId, row]));
  const pairs = rows.flatMap((cells) => {
    const row = byId.get(Number(cells.row_id));
    return row === undefined ? [] : [{ cells, row }];
  });

  it('has every row of intervals but those that name no active, and none beside', () => {
    const ids = rows.map(({ row_id }) => Number(row_id));
    expect(ids.filter((id) => !byId.has(id))).toEqual(GROUP_ROWS);
    expect(pairs).toHaveLength(catalogue.intervals.length);
  });

  it('has the same lengths and units, crops, actives, partners, kinds, regions, sources and marks', () => {
    expect(pairs.length).toBeGreaterThan(600);
    for (const { cells, row } of pairs) {
      const [shortest, longest] = [numberOf(cells.interval_min), numberOf(cells.interval_max)];
      const inMonths = cells.unit === 'months';
      expect(
        {
          months: [row.minMonths, row.maxMonths],
          days: [row.minDays, row.maxDays],
          active: row.active,
          partners: row.partners,
          crop: row.crop,
          kind: row.kind,
          region: row.region,
          source: row.source,
          mark: `[${row.mark}]`,
        },
        `row ${row.rowId}`,
      ).toEqual({
        months: inMonths ? [shortest, longest] : [null, null],
        days: inMonths ? [null, null] : [shortest, longest],
        active: cells.active,
        partners:
          cells.co_active === '' ? [] : cells.co_active.split('+').map((name) => ISO_NAMES[name] ?? name),
        crop: cells.rotation_crop,
        kind: kindOf(cells.basis),
        region: cells.region,
        source: cells.source_id,
        mark: cells.provenance,
      });
    }
  });

  it('has the same amounts of rain and rates, and asks for a bioassay where the table does', () => {
    for (const { cells, row } of pairs) {
      const where = `row ${row.rowId}`;
      const elsewhere = CONDITION_OF_OTHER_ROWS.includes(row.rowId);
      expect(rainOf(row), where).toEqual(
        cells.min_precip_mm === '' || elsewhere ? [] : [Number(cells.min_precip_mm)],
      );
      expect(numbersIn(beforeRemark(row.rateConditionGramsPerHa ?? '')), where).toEqual(
        numbersIn(beforeRemark(cells.rate_condition_g_ai_ha)),
      );
      expect(row.bioassay, where).toBe(elsewhere ? 'no' : bioassayOf(cells.bioassay_required, row.crop));
    }
  });

  it('marks a rate that was worked out from a product as computed, and never as seen', () => {
    const converted = pairs.filter(({ cells }) => cells.rate_condition_g_ai_ha.includes('converted'));
    const clauses = converted.flatMap(({ cells, row }) =>
      row.clauses.flatMap((clause) => (clause.kind === 'rate' ? [{ cells, clause }] : [])),
    );
    expect(clauses.length).toBeGreaterThan(70);
    for (const { cells, clause } of clauses) {
      expect(clause.mark, `row ${cells.row_id}`).toBe('computed');
      expect(clause.sources[0], `row ${cells.row_id}`).toBe(cells.source_id);
      const fromMemory = cells.rate_condition_g_ai_ha.includes('from memory');
      expect(clause.sources.includes('M03'), `row ${cells.row_id}`).toBe(fromMemory);
    }
  });

  it('has every active with its group, half-lives, sorption and rates', () => {
    const residuals = table(folder, 'residuals.csv');
    expect(residuals).toHaveLength(42);
    for (const cells of residuals) {
      const {
        isoName,
        group,
        fieldHalfLifeDays: life,
        kocMlPerG: koc,
        typicalRateGramsPerHa: rate,
        provenance,
      } = activeOf(cells.active);
      const [low, high = low] = cells.typical_rate_g_ai_ha.split('-');
      const computed =
        provenance.halfLifeTypical?.mark === 'computed' && cells.field_dt50_days_typical === '';
      expect(
        {
          group,
          typical: computed ? null : (life?.typical ?? null),
          dt50_low: life?.low ?? null,
          dt50_high: life?.high ?? null,
          koc: [koc?.typical ?? null, koc?.low ?? null, koc?.high ?? null],
          rate: rate === null ? null : `${rate.low}-${rate.high}`,
        },
        isoName,
      ).toEqual({
        group: Number(cells.hrac_group),
        typical: numberOf(cells.field_dt50_days_typical),
        dt50_low: numberOf(cells.dt50_low),
        dt50_high: numberOf(cells.dt50_high),
        koc: [numberOf(cells.koc_typical), numberOf(cells.koc_low), numberOf(cells.koc_high)],
        rate: low === '' ? null : `${low}-${high}`,
        ...OTHER_FIGURES[isoName],
      });
    }
  });

  it('marks no figure of an active as seen where the table has it from memory', () => {
    const remembered = table(folder, 'residuals.csv').flatMap((cells) =>
      cells.provenance
        .split(';')
        .filter((part) => part.includes('[from memory'))
        .flatMap((part) => figuresIn(part.replace(/\[from memory.*/, '')))
        .map((figure) => ({ active: activeOf(cells.active), figure })),
    );
    expect(remembered.length).toBeGreaterThan(35);
    for (const { active, figure } of remembered) {
      const mark = active.provenance[figure]?.mark ?? 'computed';
      expect(mark, `${active.isoName}, ${figure}`).not.toBe('seen');
    }
  });

  it('lists every source under its own words', () => {
    const listed = new Map(catalogue.sources.map((source) => [source.id, source]));
    const lines = readFileSync(`${folder}/SOURCES.md`, 'utf8').matchAll(/^\| (S\d+) \| (.+?) \| (.+?) \|$/gm);
    const sources = [...lines].map(([, id, title, seen]) => ({ id, reference: title, seen }));
    expect(sources.length).toBeGreaterThan(150);
    for (const source of sources) expect(listed.get(source.id)).toEqual(source);
  });
});
