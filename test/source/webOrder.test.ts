import { describe, expect, it } from 'vitest';
import { dayNumberOf } from '../../src/calendar.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { refusalOf } from '../refusal.ts';
import { tempFile } from '../tempFolder.ts';
import { recordIn, recordsIn } from './recordsIn.ts';

const none = ABSENT;
const HEADER = 'STATION,NAME,DATE,PRCP,TMAX,TMIN';

/** Days of one January on, with rain, maximum and minimum as given. */
const order = (values: readonly string[], header = HEADER) =>
  [
    header,
    ...values.map(
      (text, day) => `TST00000001,"NOWHERE, XX",2001-01-${String(day + 1).padStart(2, '0')},${text}`,
    ),
  ].join('\n');

const US = ['0.25,71,51', '0.00,70,50', '0.75,32,14'];
const METRIC = ['2.5,14.4,-5', '0,20.1,3', '1.3,33,10', '4.1,3,0', '0.8,4,1', '1.0,5,2'];
const TENTHS = ['25,144,-50', '0,201,30', '13,330,100'];

describe('units of a web order', () => {
  it('are inches and °F where nature leaves nothing else', async () => {
    const record = await recordIn(order(US));
    expect([...record.rainTenthsMm]).toEqual([64, 0, 191]);
    expect([...record.maxTempTenthsC]).toEqual([217, 211, 0]);
    expect([...record.minTempTenthsC]).toEqual([106, 100, -100]);
    expect(record.reading.notes).toEqual([
      'file.csv: Values taken as inches and °F: a temperature of 71 (line 2) is too high for °C; 0.25 (line 2) has decimals, which tenths do not.',
    ]);
    expect(record.station.name).toBe('NOWHERE, XX');
  });

  it('are mm and °C where °F and inches would be written otherwise', async () => {
    const record = await recordIn(order(METRIC));
    expect([...record.rainTenthsMm]).toEqual([25, 0, 13, 41, 8, 10]);
    expect([...record.minTempTenthsC]).toEqual([-50, 30, 100, 0, 10, 20]);
    expect(record.reading.notes).toEqual([
      'file.csv: Values taken as mm and °C: 2.5 (line 2) has decimals, which tenths do not; none of 5 rainy days has hundredths, with which inches are given.',
    ]);
  });

  it('are tenths where °C and °F would be too warm', async () => {
    const record = await recordIn(order(TENTHS));
    expect([...record.maxTempTenthsC]).toEqual([144, 201, 330]);
    expect(record.reading.notes[0]).toContain('Values taken as tenths of mm and of °C: ');
    expect(record.reading.notes[0]).toContain('a temperature of 330 (line 4) is too high for °F');
  });

  it('are tenths where there is rain alone, whole and too much for anything else', async () => {
    const values = ['3', '410', '25', '8', '112'];
    const record = await recordIn(order(values, 'STATION,NAME,DATE,PRCP'));
    expect([...record.rainTenthsMm]).toEqual([3, 410, 25, 8, 112]);
    expect(record.reading.notes[0]).toContain(
      'none of 5 rainy days has decimals, with which mm are given, and the most is 410 (line 3)',
    );
  });

  it.each([
    ['whole numbers that could be two things', ['3,12,1', '4,10,2'], ['us', 'metric', 'tenths']],
    ['rain alone, whole and little', ['3', '20', '25', '8', '11'], ['metric', 'tenths']],
    ['few values with one decimal', ['0.3', '0.1'], ['us', 'metric']],
  ])('are asked for: %s', async (_what, values, choices) => {
    const header = values[0].includes(',') ? HEADER : 'STATION,NAME,DATE,PRCP';
    const { code, message, hint, details } = await refusalOf(recordsIn(order(values, header)));
    expect(code).toBe('UNITS_AMBIGUOUS');
    expect(message).toMatch(/^file\.csv does not say its units, and its values fit /);
    for (const choice of choices) expect(hint).toContain(`--units-in ${choice} (`);
    expect(details.choices).toEqual(choices);
  });

  it('are asked for where the values fit none', async () => {
    const { code, message, details } = await refusalOf(recordsIn(order(['0.25,900,3'])));
    expect([code, details.choices]).toEqual(['UNITS_AMBIGUOUS', []]);
    expect(message).toContain('its values fit none that are known');
  });

  it('are the declared ones, and a doubt is said', async () => {
    const record = await recordIn(order(['3,12,1', '4,10,2']), { units: 'metric' });
    expect([...record.rainTenthsMm]).toEqual([30, 40]);
    expect(record.reading.notes).toEqual(['file.csv: Values taken as mm and °C, as declared.']);
    const doubtful = await recordIn(order(US), { units: 'metric' });
    expect(doubtful.reading.notes).toEqual([
      'file.csv: Values taken as mm and °C, as declared, although a temperature of 71 (line 2) is too high for °C.',
    ]);
    expect(doubtful.reading.implausible).toBe(1);
  });

  it('are not told from values that failed a check', async () => {
    const header = 'STATION,NAME,DATE,PRCP,Measurement Flag,Quality Flag,Source Flag,TMAX,TMIN';
    const record = await recordIn(
      order(['2.55, ,X,0,14.4,3', ...METRIC.map((text) => text.replace(',', ', , ,0,'))], header),
    );
    expect([...record.rainTenthsMm]).toEqual([none, 25, 0, 13, 41, 8, 10]);
    expect(record.reading.droppedByFlag).toBe(1);
    expect(record.reading.notes[0]).toContain('mm and °C');
  });
});

describe('a web order', () => {
  it('may prefix its ids, write YYYYMMDD and mark missing values with -9999', async () => {
    const record = await recordIn(
      'STATION,STATION_NAME,ELEVATION,LATITUDE,LONGITUDE,DATE,PRCP,SNOW,TMAX,TMIN\n' +
        'GHCND:TST00000001,NOWHERE,1320.5,45.5,-110.25,20010101,25,-9999,144,-50\n' +
        'GHCND:TST00000001,NOWHERE,1320.5,45.5,-110.25,20010103,-9999,3,330,-9999\n',
    );
    expect(record.station).toEqual({
      id: 'TST00000001',
      name: 'NOWHERE',
      latitudeDeg: 45.5,
      longitudeDeg: -110.25,
      elevationM: 1320.5,
      invented: false,
    });
    expect(record.firstDay).toBe(dayNumberOf(2001, 1, 1));
    expect([...record.rainTenthsMm]).toEqual([25, none, none]);
    expect([...record.minTempTenthsC]).toEqual([-50, none, none]);
    expect(record.reading).toMatchObject({ valuesRead: 4, ignoredElements: 1 });
  });

  it('of eight columns is not taken for the layout of eight fields', async () => {
    const record = await recordIn(
      'STATION,NAME,DATE,PRCP,SNOW,SNWD,TMAX,TMIN\nTST00000001,NOWHERE,2001-01-01,0.25,,,71,51\n',
    );
    expect([...record.rainTenthsMm]).toEqual([64]);
  });

  it('gives several stations, or the one that is asked for', async () => {
    const text = `${order(US)}\n${order(US).split('\n').slice(1, 2).join('').replace('TST00000001', 'TST00000002')}`;
    expect((await recordsIn(text)).map(({ station }) => station.id)).toEqual(['TST00000001', 'TST00000002']);
    const record = await createFileReader([tempFile('two.csv', text)]).record('TST00000002');
    expect([...record.rainTenthsMm]).toEqual([64]);
  });

  it('without the station asked for is passed over, however unclear', async () => {
    const unclear = tempFile('unclear.csv', order(['3,12,1']));
    const other = tempFile('other.csv', order(US).replaceAll('TST00000001', 'TST00000002'));
    const record = await createFileReader([unclear, other]).record('TST00000002');
    expect(record.source).toBe('other.csv');
  });

  it.each([
    [
      'a date',
      order([...US]).replace('2001-01-02', '2001-02-30'),
      3,
      3,
      '"2001-02-30" is no date written YYYY-MM-DD or YYYYMMDD',
    ],
    ['a value', order(US).replace('0.00', '0.0x'), 3, 4, '"0.0x" is no number'],
    ['a short line', `${order(US)}\nTST00000001,X,2001-01-04,1`, 5, 4, 'the line ends after 4 of 6 fields'],
    ['a long line', `${order(US)},5`, 4, 7, 'the line has more fields than the header’s 6'],
    [
      'an open quote',
      `${order(US)}\nTST00000001,"X,2001-01-04,1,2,3`,
      5,
      2,
      'a quote opens and does not close on its line',
    ],
    [
      'an id',
      order(US).replace('TST00000001,"NOWHERE, XX",2001-01-02', 'TST 1,X,2001-01-02'),
      3,
      1,
      '"TST 1" is no station id of letters and digits',
    ],
  ])('names line and column of what is damaged: %s', async (_what, text, line, column, sentence) => {
    const { code, message, details } = await refusalOf(recordsIn(text, { units: 'us' }));
    expect(code).toBe('FILE_DAMAGED');
    expect(message).toBe(`file.csv, line ${line}, column ${column}: ${sentence}.`);
    expect(details).toMatchObject({ line, column });
  });
});
