import { describe, expect, it } from 'vitest';
import { ABSENT } from '../../src/schema/codes.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { tempFile } from '../tempFolder.ts';

const hoursOf = async (text: string) => {
  const reader = createFileReader([tempFile('small.csv', text)], { units: 'metric' });
  return (await reader.record('TST00000001')).rainTimeHhmm;
};

describe('hours of reading in columns of their own', () => {
  it('of an older order, 9999 where not known; those of temperatures do not count', async () => {
    const flags = 'Measurement Flag,Quality Flag,Source Flag,Time of Observation';
    const text = `STATION,DATE,PRCP,${flags},TMAX,${flags}
TST00000001,20200101,1.5, , ,7,2400,5.0, , ,7,0900
TST00000001,20200102,1.5, , ,7,9999,5.0, , ,7,0900
`;
    expect(await hoursOf(text)).toEqual(Int32Array.of(2400, ABSENT));
  });

  it('of a by-year table joined with station fields', async () => {
    const text = `ID,YEAR/MONTH/DAY,ELEMENT,DATA VALUE,M-FLAG,Q-FLAG,S-FLAG,OBS-TIME,LATITUDE,LONGITUDE,ELEVATION,STATE,NAME
TST00000001,20200101,PRCP,15,,,7,0700,45.5,-110.25,1320.0,MT,NOWHERE
TST00000001,20200101,TMAX,50,,,7,0900,45.5,-110.25,1320.0,MT,NOWHERE
TST00000001,20200102,PRCP,15,,,7,,45.5,-110.25,1320.0,MT,NOWHERE
`;
    expect(await hoursOf(text)).toEqual(Int32Array.of(700, ABSENT));
  });
});
