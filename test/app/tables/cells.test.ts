import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { csvOf, guardCell, unguardCell } from '../../../src/app/tables/cells.ts';
import { readCells } from '../../../src/app/tables/readCells.ts';
import fc from '../../fastCheck.ts';
import { refusalOf } from '../../refusal.ts';

describe('a cell', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+49 30', "'+49 30"],
    ['-', "'-"],
    ['@home', "'@home"],
    ['\tx', "'\tx"],
    ["'=x", "''=x"],
    ['-110.25', '-110.25'],
    ['+1', '+1'],
    ['2026-08-14', '2026-08-14'],
    ["'tis", "'tis"],
    ['a=b', 'a=b'],
  ])('%j is written %j and read back', (text, cell) => {
    expect(guardCell(text)).toBe(cell);
    expect(unguardCell(cell)).toBe(text);
  });

  it('holds any text through a table and back, and none that a spreadsheet would run', () => {
    const texts = fc.array(
      fc.string({ unit: 'binary' }).filter((text) => !/[\uD800-\uDFFF]/.test(text)),
      {
        minLength: 3,
        maxLength: 3,
      },
    );
    const start = fc.constantFrom('=', '+', '-', '@', "'", '\t', '\r', '"', '\n', ',', ' ', '');
    fc.assert(
      fc.property(texts, start, (row, first) => {
        const cells = [`${first}${row[0]}`, row[1], 'end'];
        const text = csvOf([['a', 'b', 'c'], cells]);
        const [, raw] = parse(text, { relax_column_count: true }) as string[][];
        expect(raw[0]).not.toMatch(/^[=@\t\r]/);
        expect(readCells(text).rows.map((one) => Object.values(one.cells))).toEqual([cells]);
      }),
      { numRuns: 500 },
    );
  });
});

it('a table tells the line on which each row begins, whatever its cells hold', () => {
  const { rows } = readCells('\uFEFFa,b\r\n1,"two\nlines"\r\n\r\n2,x\r\n');
  expect(rows.map(({ line, cells }) => [line, cells.a])).toEqual([
    [2, '1'],
    [5, '2'],
  ]);
});

it.each([
  ['', 1],
  ['a,A\n1,2', 1],
  ['a,b\n1,"open', 2],
])('a text that is no table is refused: %j', async (text, line) => {
  const refusal = await refusalOf(Promise.resolve().then(() => readCells(text)));
  expect(refusal.code).toBe('TABLE_UNREADABLE');
  expect(refusal.details.line).toBe(line);
});
