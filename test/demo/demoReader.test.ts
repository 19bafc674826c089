import { describe, expect, it } from 'vitest';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { DEMO_STATION } from '../../src/demo/inventedRecord.ts';
import { questionSchema } from '../../src/schema/question.ts';
import { stationExtentSchema } from '../../src/schema/weather.ts';

describe('createDemoReader', () => {
  it('lists its one station with the extent of its record', async () => {
    const reader = createDemoReader();
    const stations = await reader.stations();
    expect(stations).toHaveLength(1);
    expect(stationExtentSchema.parse(stations[0])).toMatchObject({
      id: 'demo-invented',
      invented: true,
      firstDate: '1966-10-01',
      lastDate: '2026-09-30',
      rainDays: 21_915,
    });
  });

  it('gives each caller a record of its own, so that one may hand its columns on', async () => {
    const reader = createDemoReader();
    const record = await reader.record(DEMO_STATION.id);
    expect(record.station).toEqual(DEMO_STATION);
    const same = structuredClone(record);
    structuredClone(record, {
      transfer: [
        record.rainTenthsMm.buffer,
        record.maxTempTenthsC.buffer,
        record.minTempTenthsC.buffer,
        record.multiDayRainTenthsMm.buffer,
        record.multiDayCount.buffer,
      ],
    });
    expect(record.rainTenthsMm).toHaveLength(0);
    expect(await reader.record(DEMO_STATION.id)).toEqual(same);
    expect((await reader.stations())[0].rainDays).toBe(21_915);
  });

  it('refuses any other station and names its own', async () => {
    await expect(createDemoReader().record('X00ELSEWHERE')).rejects.toMatchObject({
      code: 'STATION_UNKNOWN',
      message: 'The demo has no station "X00ELSEWHERE".',
      hint: expect.stringContaining('demo-invented'),
    });
  });
});

describe('demoQuestion', () => {
  it('is a whole question on the demo station, asked as of the last day of its record', async () => {
    const question = questionSchema.parse(demoQuestion);
    const [station] = await createDemoReader().stations();
    expect(question.station).toBe(station.id);
    expect(question.asOf).toBe(station.lastDate);
    expect(question.appliedOn < station.lastDate && station.lastDate < question.plantOn).toBe(true);
  });
});
