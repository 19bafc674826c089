import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { checkStation } from '../../src/app/checkStation.ts';
import type { UnitSystem } from '../../src/schema/readOptions.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import { inventoryEntries, isInventory } from '../../src/source/inventory.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { isStationList, parseStationList } from '../../src/source/stationList.ts';
import { readUnpacked } from '../../src/source/weatherFile.ts';
import { refusalOf } from '../refusal.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { tempFile } from '../tempFolder.ts';

/*
 * every-file.csv holds a figure a line. "stated" figures stand in the SOURCES.md beside the records. "counted" ones
 * come from a Python script that knows nothing of this project: its csv and datetime modules read each file, values
 * that are neither empty nor -9999 are counted for PRCP, TMAX, TMIN, MDPR and DAPR (dropped where the second flag is
 * set, duplicated where station, day and element came before; the last one stands), totals are spread as model.md
 * section 1 says, and a year counts as full from 98 % of its days on. Units of its columns were typed in by hand.
 */
interface Row {
  readonly file: string;
  readonly units: string;
  readonly station: string;
  readonly figure: string;
  readonly value: string;
  readonly origin: string;
}

const table = readFileSync(fileURLToPath(new URL('every-file.csv', import.meta.url)), 'utf8');
const [, ...lines] = table.trim().split('\n');
const rows: Row[] = lines.map((line) => {
  const [file, units, station, figure, value, origin] = line.split(',');
  return { file, units, station, figure, value, origin };
});
const files = [...new Set(rows.map(({ file }) => file))];

type Figures = Record<string, number | string | null>;

const total = (records: readonly StationRecord[], of: (record: StationRecord) => number): number =>
  records.reduce((sum, record) => sum + of(record), 0);

async function figuresOf(path: string, { units, station }: Row): Promise<Figures> {
  const options = { units: (units || undefined) as UnitSystem | undefined, station: station || undefined };
  const [file] = (await findRecordFiles([path], options)).files;
  const records = await file.records();
  const checks = records.map(checkStation);
  const sum = (of: (check: (typeof checks)[number]) => number) =>
    checks.reduce((all, check) => all + of(check), 0);
  return {
    stations: records.length,
    values: total(records, ({ reading }) => reading.valuesRead),
    valuesOfAllElements: total(records, ({ reading }) => reading.valuesRead + reading.ignoredElements),
    droppedByFlag: total(records, ({ reading }) => reading.droppedByFlag),
    implausible: total(records, ({ reading }) => reading.implausible),
    duplicated: total(records, ({ reading }) => reading.duplicated),
    spreadDays: sum(({ spreadDays }) => spreadDays),
    gapDays: sum(({ filledDays }) => filledDays),
    firstYear: Math.min(...checks.map(({ firstDate }) => Number(firstDate.slice(0, 4)))),
    lastYear: Math.max(...checks.map(({ lastDate }) => Number(lastDate.slice(0, 4)))),
    fullYears: sum(({ fullYears }) => fullYears),
    meanAnnualRainMm: checks[0].meanAnnualRainMm,
    rainMissingPercent: 100 * checks[0].rainMissingFraction,
  };
}

async function listFigures(path: string, file: string): Promise<Figures> {
  const bytes = await readUnpacked(path);
  if (isStationList(file)) return { listedStations: parseStationList(bytes, file).size };
  const counts: Record<string, number> = { inventoryEntries: 0 };
  for (const { element } of inventoryEntries(bytes, file)) {
    counts.inventoryEntries++;
    counts[`inventory${element}`] = (counts[`inventory${element}`] ?? 0) + 1;
  }
  return counts;
}

/** Mean annual rain within 0.5 % where stated, shares of missing days to the printed digit, all else exactly. */
function compare({ figure, value, origin }: Row, found: Figures): void {
  const [expected, actual] = [Number(value), found[figure] as number];
  if (figure === 'meanAnnualRainMm' && origin === 'stated') {
    expect(Math.abs(actual / expected - 1), figure).toBeLessThan(0.005);
  } else if (figure === 'meanAnnualRainMm') {
    expect(Math.abs(actual - expected), figure).toBeLessThanOrEqual(0.005 + 1e-9);
  } else if (figure === 'rainMissingPercent') {
    const digit = 10 ** -(value.split('.')[1]?.length ?? 0);
    expect(Math.abs(actual - expected), figure).toBeLessThanOrEqual(digit / 2);
  } else {
    expect(actual, figure).toBe(expected);
  }
}

describeWithRecords('every file', (folder) => {
  it('of the folder stands in the table', () => {
    const there = ['ghcnd', 'derived', 'stations', 'bench'].flatMap((part) =>
      readdirSync(join(folder, part)).map((name) => `${part}/${name}`),
    );
    expect([...files].sort()).toEqual(there.sort());
  });

  it.each(files)('%s', async (file) => {
    const path = join(folder, file);
    const expected = rows.filter((row) => row.file === file);
    const refused = expected.find(({ figure }) => figure === 'refusal');
    if (refused !== undefined) {
      const [record] = (await findRecordFiles([path])).files;
      expect((await refusalOf(record.records())).code).toBe(refused.value);
    }
    const name = file.split('/')[1];
    const isList = isStationList(name) || isInventory(name);
    const found = isList
      ? await listFigures(path, name)
      : refused === undefined
        ? await figuresOf(path, expected[0])
        : {};
    for (const row of expected) if (row !== refused) compare(row, found);
  });
});

/** The two layouts of other programs, rewritten as a user would: one line a day under a header that names units. */
const REWRITTEN = {
  'stations/SA068135.WTH.gz': {
    twin: 'derived/X00SA068135.dly.gz',
    line: (text: string) => {
      const match = /^(\d\d)(\d{3})\s+\S+\s+(\S+)\s+(\S+)\s+(\S+)/.exec(text);
      if (match === null) return [];
      const year = Number(match[1]) + (Number(match[1]) > 50 ? 1900 : 2000);
      const date = new Date(Date.UTC(year, 0, Number(match[2]))).toISOString().slice(0, 10);
      return [`${date},${match[5]},${match[3]},${match[4]}`];
    },
  },
  'stations/champion_climate.txt.gz': {
    twin: 'derived/X00CHAMPION.dly.gz',
    line: (text: string) => {
      const [day, month, year, min, max, rain] = text.trim().split(/\s+/);
      if (!(Number(year) > 0)) return [];
      return [`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')},${rain},${max},${min}`];
    },
  },
};

describeWithRecords('a layout of another program, rewritten as a gauge file', (folder) => {
  it.each(Object.entries(REWRITTEN))('%s gives the record of its twin', async (file, { twin, line }) => {
    const text = (await readUnpacked(join(folder, file))).toString('latin1');
    const path = tempFile(
      'own.csv',
      ['date,rain mm,max temp C,min temp C', ...text.split(/\r?\n/).flatMap(line)].join('\n'),
    );
    const [own] = await (await findRecordFiles([path], { station: 'own' })).files[0].records();
    const [other] = await (await findRecordFiles([join(folder, twin)])).files[0].records();
    expect(own.firstDay).toBe(other.firstDay);
    for (const column of COLUMNS.slice(0, 3)) {
      expect(own[column]).toHaveLength(other[column].length);
      // Values of half a tenth go up here, while the twin was rounded to the even tenth.
      const apart = [...own[column].entries()].filter(
        ([day, value]) =>
          value !== other[column][day] && !(value === other[column][day] + 1 && value % 2 !== 0),
      );
      expect(apart, column).toEqual([]);
    }
    const stated = rows.find((row) => row.file === twin && row.figure === 'meanAnnualRainMm') as Row;
    const meanMm = checkStation(own).meanAnnualRainMm as number;
    expect(Math.abs(meanMm / Number(stated.value) - 1)).toBeLessThan(0.005);
  });
});

/**
 * Files that SOURCES.md names as the origins of rewritten ones, what must be said about them, and the days that differ:
 * on 24 days Bozeman had 0.75 in, 190.5 tenths of mm, which the public records give as 191 and its twin as 190.
 */
const TWINS = [
  ['ghcnd/Portal4sw_regional_weather.csv.gz', 'derived/USC00026716.dly.gz', {}, 0],
  [
    'stations/BozemanDailyTemps.csv.gz',
    'derived/USC00241044.dly.gz',
    { units: 'us', station: 'USC00241044' },
    24,
  ],
  ['stations/USW00023066_data.csv.gz', 'derived/USW00023066.dly.gz', { units: 'metric' }, 0],
] as const;

describeWithRecords('the same values in two layouts', (folder) => {
  it.each(TWINS)('%s and %s', async (file, twin, options, roundedOtherwise) => {
    const [own] = await (await findRecordFiles([join(folder, file)], options)).files[0].records();
    const [other] = await (await findRecordFiles([join(folder, twin)])).files[0].records();
    expect(own.station.id).toBe(other.station.id);
    expect(own.firstDay).toBe(other.firstDay);
    const differing = own.rainTenthsMm.filter((value, day) => value !== other.rainTenthsMm[day]);
    expect([...differing]).toEqual(new Array(roundedOtherwise).fill(191));
    for (const column of COLUMNS.slice(1)) expect(own[column], column).toEqual(other[column]);
  });
});

const COLUMNS = [
  'rainTenthsMm',
  'maxTempTenthsC',
  'minTempTenthsC',
  'multiDayRainTenthsMm',
  'multiDayCount',
] as const;

describe('the table', () => {
  it('says of every figure where it comes from', () => {
    expect(rows.length).toBeGreaterThan(300);
    const origins = new Set(rows.filter(({ figure }) => figure !== 'refusal').map(({ origin }) => origin));
    expect([...origins].sort()).toEqual(['counted', 'stated']);
  });
});
