import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { csvFields } from '../../src/source/csvLine.ts';
import { inventoryEntries } from '../../src/source/inventory.ts';
import { refusalOf } from '../refusal.ts';
import { recordIn, recordsIn } from './recordsIn.ts';

describe('a by-year file joined with station fields', () => {
  const HEADER =
    'ID,YEAR/MONTH/DAY,ELEMENT,DATA VALUE,M-FLAG,Q-FLAG,S-FLAG,OBS-TIME,LATITUDE,LONGITUDE,ELEVATION,STATE,NAME,geometry';
  const line = (value: string, more = ',,E,') =>
    `TST00000001,17630101,TMAX,${value},${more},45.5,9.25,150.0,XX,NOWHERE,POINT (9.25 45.5)`;

  it('gives values in tenths, flags and place', async () => {
    const record = await recordIn(
      `${HEADER}\n${line('-36')}\n${line('12', ',X,E,').replace('0101', '0102')}\n`,
    );
    expect([...record.maxTempTenthsC]).toEqual([-36]);
    expect(record.reading).toMatchObject({ valuesRead: 2, droppedByFlag: 1, notes: [] });
    expect(record.station).toMatchObject({
      name: 'NOWHERE',
      latitudeDeg: 45.5,
      longitudeDeg: 9.25,
      elevationM: 150,
    });
  });

  it('may hold the name where the state belongs, which is said', async () => {
    const record = await recordIn(`${HEADER}\n${line('-36').replace('XX,NOWHERE', 'NOWHERE,')}\n`);
    expect(record.station.name).toBe('NOWHERE');
    expect(record.reading.notes).toEqual([
      'file.csv: The station\'s name "NOWHERE" stands in the column of the state.',
    ]);
  });

  it.each([
    ['-3.6', 4, '"-3.6" is no whole number'],
    ['1,XY,,E,,1', 15, 'the line has more fields than the header’s 14'],
  ])('names line and column of what is damaged: %s', async (value, column, what) => {
    const { message } = await refusalOf(recordsIn(`${HEADER}\n${line('1')}\n${line(value)}\n`));
    expect(message).toBe(`file.csv, line 3, column ${column}: ${what}.`);
  });
});

describe('a by-year file', () => {
  const rows = ['20010101', '20010102'].flatMap((date) =>
    ['TST00000001', 'TST00000002', 'TST0000001'].map((id, index) => `${id},${date},PRCP,${index},,,,`),
  );

  it.each([
    ['plain', rows.join('\n')],
    ['with header', ['ID,DATE,ELEMENT,DATA VALUE,M-FLAG,Q-FLAG,S-FLAG,OBS-TIME', ...rows].join('\r\n')],
    ['packed', gzipSync(rows.join('\n'))],
  ])('%s keeps many stations apart', async (_how, content) => {
    const records = await recordsIn(content, {}, '2001.csv');
    expect(records.map(({ station, rainTenthsMm }) => [station.id, ...rainTenthsMm])).toEqual([
      ['TST00000001', 0, 0],
      ['TST00000002', 1, 1],
      ['TST0000001', 2, 2],
    ]);
  });
});

describe('the inventory', () => {
  const LINES = [
    'TST00000001  17.1167  -61.7833 PRCP 1949 2024',
    'TST00000001  17.1167  -61.7833 TMAX 1950 1960',
    'TST00000002  -7.5000   61.0000 PRCP 1901 2001',
  ];
  const entries = (lines: readonly string[], wish = {}) => [
    ...inventoryEntries(Buffer.from(lines.join('\n')), 'inventory.txt', wish),
  ];

  it('gives place, element and years, of what is wanted alone', () => {
    expect(entries(LINES)[1]).toEqual({
      stationId: 'TST00000001',
      latitudeDeg: 17.1167,
      longitudeDeg: -61.7833,
      element: 'TMAX',
      firstYear: 1950,
      lastYear: 1960,
    });
    expect(entries(LINES, { elements: new Set(['PRCP']) }).map(({ lastYear }) => lastYear)).toEqual([
      2024, 2001,
    ]);
    expect(entries(LINES, { stations: new Set(['TST00000002']) })).toHaveLength(1);
  });

  it.each([
    [LINES[0].slice(0, 30), 'column 31: the line ends after 30 characters; a line of this layout has 45'],
    [LINES[0].replace('17.1167 ', '97.1167 '), 'column 13: " 97.1167" is no latitude from -90 to 90'],
    [LINES[0].replace('1949', '19x9'), 'column 37: "19x9" is no year'],
    [LINES[0].replace('PRCP', 'prcp'), 'column 32: "prcp" is no element name of 4 letters'],
  ])('refuses a damaged line: %s', (line, sentence) => {
    expect(() => entries([LINES[1], line])).toThrow(`inventory.txt, line 2, ${sentence}.`);
  });

  it('is told apart from a record', async () => {
    const { code, message } = await refusalOf(recordsIn(LINES.join('\n'), {}, 'ghcnd-inventory.txt'));
    expect([code, message]).toEqual([
      'FILE_LAYOUT_UNKNOWN',
      'ghcnd-inventory.txt is a list of what stations measure, not a record.',
    ]);
  });
});

describe('a line of delimited text', () => {
  it.each([
    ['a, b ,', ['a', 'b', '']],
    ['"a, b","say ""so""", "c "', ['a, b', 'say "so"', 'c']],
    ['"",x', ['', 'x']],
    ['', ['']],
  ])('%s', (text, fields) => {
    expect(csvFields(text, ',')).toEqual(fields);
  });

  it('with an open quote is none', () => {
    expect(csvFields('a,"b', ',')).toBeNull();
  });
});
