import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { createFileReader } from '../../src/source/fileReader.ts';
import { readUnpacked } from '../../src/source/weatherFile.ts';
import { dlyLine } from '../fixtures/weather/lines.ts';
import { refusalOf } from '../refusal.ts';
import { tempFile, tempFolder } from '../tempFolder.ts';

const ID = 'TST00000001';
const good = dlyLine(ID, 1987, 1, 'PRCP', { 1: 5 });
const row = `${ID},19870101,PRCP,5,,,,`;

const refusedAs = async (name: string, content: string | Buffer) => {
  const { code, message, hint } = await refusalOf(createFileReader([tempFile(name, content)]).record(ID));
  expect(hint).not.toBe('');
  return [code, message];
};

describe('damaged fixed-width lines', () => {
  const feb = (day: number) => dlyLine(ID, 1987, 2, 'PRCP', { [day]: 3 });
  it.each([
    [
      'a short line',
      good.slice(0, 100),
      'column 101: the line ends after 100 characters; a line of this layout has 269',
    ],
    ['a long line', `${good}12`, 'column 270: text goes on beyond character 269'],
    [
      'letters for a value',
      good.replace('-9999   -9999', '-9999    12x4'),
      'column 38: " 12x4" is no whole number',
    ],
    ['a month 13', good.replace('198701', '198713'), 'column 16: "13" is no month from 1 to 12'],
    ['a year 0987', good.replace('198701', '098701'), 'column 12: "0987" is no year from 1600 to 2199'],
    [
      'a blank in the id',
      good.replace(ID, 'TST0000 001'),
      'column 1: "TST0000 001" is no station id of 11 letters and digits',
    ],
    [
      '30 February',
      feb(30),
      'column 254: month 2 of 1987 has no day 30, yet its value is 3 where -9999 belongs',
    ],
    [
      '29 February outside a leap year',
      feb(29),
      'column 246: month 2 of 1987 has no day 29, yet its value is 3 where -9999 belongs',
    ],
  ])('%s', async (_what, line, sentence) => {
    const path = tempFile('bad.dly', `${good}\n\n${line}\n`);
    const { code, message, details } = await refusalOf(createFileReader([path]).stations());
    expect(code).toBe('FILE_DAMAGED');
    expect(message).toBe(`bad.dly, line 3, ${sentence}.`);
    expect(details).toMatchObject({ file: 'bad.dly', line: 3 });
  });

  it('reads a line whose last blank flags were left off', async () => {
    const record = await createFileReader([tempFile('trimmed.dly', `${good.slice(0, 266)}\r\n`)]).record(ID);
    expect([...record.rainTenthsMm]).toEqual([5]);
  });
});

describe('damaged CSV lines', () => {
  it.each([
    [
      'too few fields',
      `${ID},19870102,PRCP,5`,
      'column 4: the line ends after 4 of 8 fields (id, date, element, value, three flags and time)',
    ],
    [
      'too many fields',
      `${row},1`,
      'column 9: the line has more than 8 fields (id, date, element, value, three flags and time)',
    ],
    [
      'a day that does not exist',
      row.replace('19870101', '19870231'),
      'column 2: "19870231" is no date written YYYYMMDD',
    ],
    [
      'a date with dashes',
      row.replace('19870101', '1987-01-01'),
      'column 2: "1987-01-01" is no date written YYYYMMDD',
    ],
    ['a long element', row.replace('PRCP', 'PRECIP'), 'column 3: "PRECIP" is no element name of 4 letters'],
    ['a decimal value', row.replace(',5,', ',5.2,'), 'column 4: "5.2" is no whole number'],
    ['a long flag', `${ID},19870102,PRCP,5,,XY,,`, 'column 6: "XY" is no flag of one character'],
    ['an empty id', row.replace(ID, ''), 'column 1: "" is no station id of letters and digits'],
    [
      'a quote',
      row.replace('PRCP', '"PRCP"'),
      'column 3: a quote character stands in the line; this layout quotes nothing, so the file has another layout or was rewritten',
    ],
  ])('%s', async (_what, line, sentence) => {
    const { code, message } = await refusalOf(
      createFileReader([tempFile('bad.csv', `${row}\n${line}\n`)]).stations(),
    );
    expect(code).toBe('FILE_DAMAGED');
    expect(message).toBe(`bad.csv, line 2, ${sentence}.`);
  });
});

describe('files that are no records', () => {
  it('a packed file cut short', async () => {
    const packed = gzipSync(`${good}\n`.repeat(50));
    expect(await refusedAs('cut.dly.gz', packed.subarray(0, packed.length - 20))).toEqual([
      'FILE_DAMAGED',
      'cut.dly.gz ends in the middle: its packed content is cut short.',
    ]);
  });

  it('a packed file with a wrong check sum', async () => {
    const packed = Buffer.from(gzipSync(good));
    packed[packed.length - 6] ^= 0xff;
    expect(await refusedAs('sum.dly.gz', packed)).toEqual([
      'FILE_DAMAGED',
      'sum.dly.gz cannot be unpacked: its packed content is damaged.',
    ]);
  });

  it('a web page, an empty file, an empty packed file, an unknown layout, a missing path', async () => {
    expect(await refusedAs('page.csv', '\n<!DOCTYPE html><html>no</html>')).toEqual([
      'FILE_DAMAGED',
      'page.csv holds a web page, not a weather record.',
    ]);
    expect(await refusedAs('empty.dly', '')).toEqual(['FILE_EMPTY', 'empty.dly is empty.']);
    expect(await refusedAs('empty.dly.gz', gzipSync(''))).toEqual(['FILE_EMPTY', 'empty.dly.gz is empty.']);
    expect(await refusedAs('blank.dly', ' \n \n')).toEqual([
      'FILE_EMPTY',
      'blank.dly holds nothing but blanks.',
    ]);
    expect(await refusedAs('other.csv', 'date,remark\n1987-01-01,5\n')).toEqual([
      'FILE_LAYOUT_UNKNOWN',
      'other.csv has no layout that can be read; its first line begins "date,remark".',
    ]);
    const missing = await refusalOf(createFileReader(['no/such.dly']).record(ID));
    expect([missing.code, missing.message]).toEqual([
      'FILE_NOT_FOUND',
      'There is no file or folder "no/such.dly".',
    ]);
  });

  it('a file that unpacks to more than allowed', async () => {
    const bomb = tempFile('large.dly.gz', gzipSync(Buffer.alloc(100_000, ' ')));
    const { code, message } = await refusalOf(readUnpacked(bomb, 50_000));
    expect([code, message]).toEqual(['FILE_TOO_LARGE', 'large.dly.gz holds more than 50000 bytes unpacked.']);
    const plain = tempFile('large.dly', Buffer.alloc(100_000, ' '));
    expect((await refusalOf(readUnpacked(plain, 50_000))).code).toBe('FILE_TOO_LARGE');
  });

  it('a folder without records', async () => {
    const { code } = await refusalOf(createFileReader([tempFolder()]).stations());
    expect(code).toBe('RECORDS_NONE');
  });
});
