import { describe, expect, it } from 'vitest';
import { ABSENT } from '../../src/schema/codes.ts';
import { refusalOf } from '../refusal.ts';
import { recordIn, recordsIn } from './recordsIn.ts';

const none = ABSENT;
const HEADER =
  'year,station,date,latitude,longitude,elevation,name,tmin,tmin_attributes,prcp,prcp_attributes,mdpr,mdpr_attributes,dapr,dapr_attributes,tobs,tobs_attributes';

/** One day: minimum, rain, its flags, multi-day total and its days. */
const day = (date: string, tmin: string, rain: string, flags: string, total = '', days = '') =>
  `2001,"TST00000001",${date},45.5,-110.25,1320,"NOWHERE, XX US",${tmin},"${tmin && ',,0'}",${rain},"${flags}",${total},"${total && ',,0'}",${days},"${days && ',,0'}",4.4,",,0,1800"`;

const RAINY = ['2.5', '1.3', '4.1', '0.8', '1.0'].map((rain, index) =>
  day(`2001-02-0${index + 1}`, '-5', rain, ',,0,1800'),
);

describe('daily summaries with attribute columns', () => {
  it('are read by the names of their columns, flags heeded', async () => {
    const text = [
      HEADER,
      day('2001-01-30', '-0.6', '0', 'P,,0'),
      day('2001-01-31', '-7.2', '30.5', ',X,0'),
      ...RAINY,
    ].join('\n');
    const record = await recordIn(text);
    expect(record.station).toEqual({
      id: 'TST00000001',
      name: 'NOWHERE, XX US',
      latitudeDeg: 45.5,
      longitudeDeg: -110.25,
      elevationM: 1320,
      invented: false,
    });
    expect([...record.rainTenthsMm]).toEqual([0, none, 25, 13, 41, 8, 10]);
    expect([...record.minTempTenthsC.slice(0, 3)]).toEqual([-6, -72, -50]);
    expect(record.reading).toMatchObject({
      valuesRead: 14,
      droppedByFlag: 1,
      presumedZero: 1,
      ignoredElements: 7,
    });
  });

  it('may have the header in capitals and the columns in any order', async () => {
    const text = [
      '"DATE","PRCP_ATTRIBUTES","STATION","PRCP"',
      ...['0.25', '0.01', '0.30', '1.00', '0.07', '0.02'].map(
        (rain, index) => `"2001-02-0${index + 1}",",,N","US1XX000001","${rain}"`,
      ),
    ].join('\n');
    const record = await recordIn(text);
    expect([...record.rainTenthsMm]).toEqual([64, 3, 76, 254, 18, 5]);
    expect(record.reading.notes[0]).toContain('Values taken as inches and °F');
  });

  it('keep totals of several days in tenths where their sizes say so', async () => {
    const text = [HEADER, ...RAINY, day('2001-02-08', '', '', '', '104', '3')].join('\n');
    const record = await recordIn(text);
    expect([...record.multiDayRainTenthsMm.slice(5)]).toEqual([none, none, 104]);
    expect([...record.multiDayCount.slice(5)]).toEqual([none, none, 3]);
    expect(record.reading.notes[1]).toBe(
      'file.csv: 1 total of several days read in tenths of mm although rain is in mm: all whole, in the middle 104 where a rainy day has 1.9 mm.',
    );
  });

  it('read totals like the rain where they have decimals or fit its size', async () => {
    const decimals = await recordIn(
      [HEADER, ...RAINY, day('2001-02-08', '', '', '', '10.4', '3')].join('\n'),
    );
    expect(decimals.multiDayRainTenthsMm.at(-1)).toBe(104);
    expect(decimals.reading.notes).toHaveLength(1);
    const small = await recordIn([HEADER, ...RAINY, day('2001-02-08', '', '', '', '5', '3')].join('\n'));
    expect(small.multiDayRainTenthsMm.at(-1)).toBe(50);
    expect(small.reading.notes[1]).toContain('1 total of several days read in mm like the rain');
  });

  it('read totals in tenths of mm beside inches too, and plainly where all is in tenths', async () => {
    const us = RAINY.map((line, index) =>
      line.replace(/,(\d\.\d),",,0,1800"/, `,0.${index + 1}5,",,0,1800"`),
    );
    const inches = await recordIn([HEADER, ...us, day('2001-02-08', '', '', '', '104', '3')].join('\n'), {
      units: 'us',
    });
    expect(inches.multiDayRainTenthsMm.at(-1)).toBe(104);
    const tenths = await recordIn([HEADER, day('2001-02-08', '', '', '', '104', '3')].join('\n'), {
      units: 'tenths',
    });
    expect([...tenths.multiDayRainTenthsMm]).toEqual([104]);
    expect(tenths.reading.notes).toHaveLength(1);
  });

  it('name line and column of what is damaged', async () => {
    const text = [HEADER, ...RAINY, day('2001-02-08', '', '1.2.3', ',,0')].join('\n');
    expect((await refusalOf(recordsIn(text))).message).toBe(
      'file.csv, line 7, column 10: "1.2.3" is no number.',
    );
  });
});
