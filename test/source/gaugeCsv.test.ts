import { describe, expect, it } from 'vitest';
import { dayNumberOf } from '../../src/calendar.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { refusalOf } from '../refusal.ts';
import { tempFile } from '../tempFolder.ts';
import { recordIn, recordsIn } from './recordsIn.ts';

const none = ABSENT;
const station = 'my-gauge';

describe('the header of a gauge file', () => {
  it.each([
    ['Date,Rain (in),High (F),Low (F),Remark'],
    ['DATE_correct,precip_in,tmax_f,tmin_f,x'],
    ['obs date,rainIn,Max Temp °F,Min Temp °F,Rainmaker'],
    ['Day,Rainfall inches,Tmax(F),Tmin(F),Wind'],
  ])('%s', async (header) => {
    const record = await recordIn(`${header}\n2020-03-04,0.25,71,51,dry\n`, { station });
    expect(record.station.id).toBe(station);
    expect(record.firstDay).toBe(dayNumberOf(2020, 3, 4));
    expect([record.rainTenthsMm[0], record.maxTempTenthsC[0], record.minTempTenthsC[0]]).toEqual([
      64, 217, 106,
    ]);
    const names = header.split(',');
    expect(record.reading.notes).toEqual([
      `file.csv: Columns guessed by their names: date from "${names[0]}", rain from "${names[1]}", maximum temperature from "${names[2]}", minimum temperature from "${names[3]}"; not used: "${names[4]}".`,
      'file.csv: Rain taken as inches and temperatures as °F, as their columns say.',
    ]);
  });

  it('may name year, month and day, and the station', async () => {
    const record = await recordIn('"station","year","month","day","rain mm"\n"A-1",2020,3,4,2.5\n');
    expect([record.station.id, record.firstDay, record.rainTenthsMm[0]]).toEqual([
      'A-1',
      dayNumberOf(2020, 3, 4),
      25,
    ]);
    expect(record.reading.notes[0]).toContain(
      'date from "year", "month", "day", rain from "rain mm", station from',
    );
  });

  it('may stand under lines about the station', async () => {
    const text =
      'Some data\nStation Name,NOWHERE FIELD\nStation ID,TST00000001\nLatitude,45.5 deg,Longitude,-110.25 deg\nElevation,1000 ft\n\nDATE,PRCP mm\n2020-03-04,2.5\n';
    const record = await recordIn(text, { station });
    expect(record.station).toEqual({
      id: 'TST00000001',
      name: 'NOWHERE FIELD',
      latitudeDeg: 45.5,
      longitudeDeg: -110.25,
      elevationM: 304.8,
      invented: false,
    });
    expect(record.reading.notes.at(-1)).toBe(
      'file.csv: The station id comes from the lines above its header; "my-gauge" is not used.',
    );
  });

  it('may be separated by semicolons, with decimal commas and a byte order mark', async () => {
    const record = await recordIn('\ufeffDate;Rain mm\n04.03.2020;2,5\n14.03.2020;1\n', { station });
    expect([record.rainTenthsMm[0], record.rainTenthsMm[10]]).toEqual([25, 10]);
  });

  it('is refused where two columns may be the rain', async () => {
    const { code, message } = await refusalOf(
      recordsIn('date,rain am mm,rain pm mm\n2020-03-04,1,2\n', { station }),
    );
    expect([code, message]).toEqual([
      'COLUMNS_AMBIGUOUS',
      'file.csv: the columns "rain am mm" and "rain pm mm" may hold the same thing, and one alone can be read.',
    ]);
  });
});

describe('the station of a gauge file', () => {
  it('is asked for where the file names none', async () => {
    const { code, message, hint } = await refusalOf(
      recordsIn('date,rain mm\n2020-03-04,1\n', {}, 'north field.csv.txt'),
    );
    expect([code, message, hint]).toEqual([
      'STATION_UNNAMED',
      'north field.csv.txt does not say which station its values come from.',
      'Name it, for instance --as-station north-field.',
    ]);
  });

  it('does not stand in the way of another one', async () => {
    const gauge = tempFile('gauge.csv', 'date,rain\n1/2/2020,1\n');
    const record = tempFile('rec.csv', 'TST00000001,20010101,PRCP,5,,,,\n');
    const reader = createFileReader([gauge, record]);
    expect((await reader.record('TST00000001')).source).toBe('rec.csv');
    expect((await refusalOf(reader.record(station))).code).toBe('STATION_UNNAMED');
    const named = createFileReader([gauge, record], { station, units: 'metric', dates: 'day-first' });
    expect((await named.record(station)).firstDay).toBe(dayNumberOf(2020, 2, 1));
  });

  it('may differ from line to line', async () => {
    const text = 'site,date,rain_mm\nA,2020-03-04,1\nB,2020-03-04,2\n';
    expect((await recordsIn(text)).map((one) => [one.station.id, one.rainTenthsMm[0]])).toEqual([
      ['A', 10],
      ['B', 20],
    ]);
  });

  it('in a column is looked for before anything is asked', async () => {
    const unclear = tempFile('unclear.csv', 'site,date,rain\nA,3/4/2020,1\n');
    const clear = tempFile('clear.csv', 'site,date,rain_mm\nB,2020-03-04,2\n');
    const reader = createFileReader([unclear, clear]);
    expect((await reader.record('B')).source).toBe('clear.csv');
    expect((await refusalOf(reader.record('A'))).code).toBe('DATES_AMBIGUOUS');
  });
});

describe('dates of a gauge file', () => {
  const gauge = (...dates: string[]) => ['date,rain mm', ...dates.map((date) => `${date},1`)].join('\n');
  const daysOf = async (text: string, options = {}) => {
    const record = await recordIn(text, { station, ...options });
    return [...record.rainTenthsMm.entries()].flatMap(([index, value]) =>
      value === none ? [] : [record.firstDay + index],
    );
  };
  const march4 = dayNumberOf(2020, 3, 4);
  const march14 = dayNumberOf(2020, 3, 14);
  const april3 = dayNumberOf(2020, 4, 3);

  it.each([
    ['2020-03-04', march4],
    ['20200304', march4],
    ['2020/3/4', march4],
    ['2020-03-04T00:00:00', march4],
  ])('%s needs no proof', async (date, dayNumber) => {
    const record = await recordIn(gauge(date), { station });
    expect(record.firstDay).toBe(dayNumber);
    expect(record.reading.notes.some((note) => note.includes('Dates'))).toBe(false);
  });

  it('are month-first or day-first as a date proves', async () => {
    expect(await daysOf(gauge('3/4/2020', '3/14/2020'))).toEqual([march4, march14]);
    expect(await daysOf(gauge('4/3/2020', '14/3/2020'))).toEqual([march4, march14]);
    const { notes } = (await recordIn(gauge('3/4/2020', '03/14/2020'), { station })).reading;
    expect(notes.at(-1)).toBe('file.csv: Dates read month-first, as "03/14/2020" (line 3) proves.');
  });

  it('are asked for where no date proves it, and read as declared', async () => {
    const { code, message, hint } = await refusalOf(recordsIn(gauge('3/4/2020', '5/12/2020'), { station }));
    expect([code, message, hint]).toEqual([
      'DATES_AMBIGUOUS',
      'file.csv: dates such as "3/4/2020" may be day-first or month-first, and no day above 12 tells.',
      'Say how they are written: --dates day-first or --dates month-first.',
    ]);
    expect(await daysOf(gauge('3/4/2020'), { dates: 'month-first' })).toEqual([march4]);
    expect(await daysOf(gauge('3/4/2020'), { dates: 'day-first' })).toEqual([april3]);
  });

  it('are refused where they contradict each other or what was declared', async () => {
    expect((await refusalOf(recordsIn(gauge('3/14/2020', '14/3/2020'), { station }))).message).toBe(
      'file.csv: "14/3/2020" (line 3) is day-first but "3/14/2020" (line 2) is month-first.',
    );
    expect(
      (await refusalOf(recordsIn(gauge('3/4/2020', '3/14/2020'), { station, dates: 'day-first' }))).message,
    ).toBe(
      'file.csv, line 3, column 1: "3/14/2020" is not a date written day-first with a year of four digits, or as 2020-03-04.',
    );
  });

  it.each([
    ['3/4/20', 'such as 2020-03-04'],
    ['2020-02-30', 'such as 2020-03-04'],
    ['2020-03-04 07:00', 'such as 2020-03-04'],
    ['', 'such as 2020-03-04'],
  ])('"%s" is refused', async (date, how) => {
    const { code, message, hint } = await refusalOf(recordsIn(gauge('2020-03-03', date), { station }));
    expect([code, message]).toEqual([
      'FILE_DAMAGED',
      `file.csv, line 3, column 1: "${date}" is not a date ${how}.`,
    ]);
    expect(hint).toBe('Correct the line in the file and read it again.');
  });
});

describe('units of a gauge file', () => {
  const line = '2020-03-04,0.25,71,51';
  it('are asked for where no column says them', async () => {
    const { code, message, hint, details } = await refusalOf(
      recordsIn(`date,rain,high,low\n${line}\n`, { station }),
    );
    expect([code, message]).toEqual(['UNITS_UNKNOWN', 'file.csv: its column "rain" does not say its unit.']);
    expect(hint).toContain('--units-in us (inches and °F)');
    expect(details.choices).toEqual(['us']);
  });

  it('are the declared ones, a doubt said', async () => {
    const us = await recordIn(`date,rain,high,low\n${line}\n`, { station, units: 'us' });
    expect([us.rainTenthsMm[0], us.maxTempTenthsC[0]]).toEqual([64, 217]);
    expect(us.reading.notes[1]).toBe('file.csv: Values taken as inches and °F, as declared.');
    const metric = await recordIn(`date,rain,high,low\n${line}\n`, { station, units: 'metric' });
    expect(metric.reading.notes[1]).toContain('although a temperature of 71 (line 2) is too high for °C');
  });

  it('may differ between rain and temperatures, where both say so', async () => {
    const record = await recordIn(`date,rain mm,high F,low F\n${line}\n`, { station });
    expect([record.rainTenthsMm[0], record.maxTempTenthsC[0]]).toEqual([3, 217]);
  });

  it('of the rain hold for temperatures that do not say', async () => {
    const record = await recordIn(`date,rain in,high,low\n${line}\n`, { station });
    expect(record.maxTempTenthsC[0]).toBe(217);
    expect(record.reading.notes[1]).toContain('and temperatures, whose columns do not say, as °F');
  });

  it.each([
    ['date,rain mm,high,low', {}, 'a temperature of 71 (line 2) is too high for °C'],
    ['date,rain mm,high C,low F', {}, 'its temperature columns name different units'],
    [
      'date,rain mm',
      { units: 'us' },
      'its column "rain mm" names mm and °C, but inches and °F were declared',
    ],
  ] as const)('are refused where they cannot be: %s', async (header, options, what) => {
    const short = line.split(',').slice(0, header.split(',').length).join(',');
    const { code, message } = await refusalOf(recordsIn(`${header}\n${short}\n`, { station, ...options }));
    expect([code, message]).toEqual(['UNITS_CONFLICT', `file.csv: ${what}.`]);
  });
});

describe('values of a gauge file', () => {
  it('may be missing or a trace in several words', async () => {
    const text =
      'date,rain mm\n2020-03-01,1\n2020-03-02,\n2020-03-03,NA\n2020-03-04,T\n2020-03-05,-9999\n,\n2020-03-06,3\n';
    const record = await recordIn(text, { station });
    expect([...record.rainTenthsMm]).toEqual([10, none, none, 0, none, 30]);
    expect(record.reading.notes.slice(2)).toEqual([
      'file.csv: 1 value of trace read as no rain.',
      'file.csv: 2 values marked as missing.',
    ]);
  });

  it('that are no numbers are refused by line and column', async () => {
    const { message } = await refusalOf(recordsIn('note\n\ndate,rain mm\n2020-03-01,wet\n', { station }));
    expect(message).toBe('file.csv, line 4, column 2: "wet" is no number.');
  });

  it('that stand twice for a day are counted, and impossible ones dropped', async () => {
    const record = await recordIn('date,rain mm\n2020-03-01,1\n2020-03-01,2\n2020-03-02,-1\n', { station });
    expect([...record.rainTenthsMm]).toEqual([20]);
    expect(record.reading).toMatchObject({ duplicated: 1, implausible: 1 });
  });
});
