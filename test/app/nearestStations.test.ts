import { describe, expect, it } from 'vitest';
import { companionStation, rainNeighbours } from '../../src/app/companionStation.ts';
import { nearestStations } from '../../src/app/nearestStations.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { OutOfRangeError } from '../../src/errors.ts';
import { nearestStationsSchema } from '../../src/schema/place.ts';
import { extent } from '../fixtures/weather/extent.ts';

/** Kilometres in a degree of latitude on a globe of 6371 km. */
const KM = 111.19;
const north = (km: number, id: string, over = {}) => extent({ id, latitudeDeg: 45 + km / KM, ...over });
const place = { latitudeDeg: 45, longitudeDeg: -110, elevationM: 1000 };

describe('nearestStations', () => {
  it('lists by distance with what speaks against each, all in kilometres', () => {
    const near = nearestStations(
      [
        north(30, 'FAR'),
        north(10, 'HIGH', { elevationM: 1400 }),
        north(20, 'SHORT', { firstDate: '2001-01-01', rainDays: 7305, temperatureDays: 0 }),
      ],
      place,
    );
    expect(nearestStationsSchema.parse(near)).toEqual(near);
    expect(near.stations.map(({ id }) => id)).toEqual(['HIGH', 'SHORT', 'FAR']);
    const [high, short, far] = near.stations;
    expect(high.distanceKm).toBeCloseTo(10, 2);
    expect(high.elevationDifferenceM).toBe(400);
    expect(high.cost.elevationKm).toBeCloseTo(40, 9);
    expect(short.elements).toEqual(['rain']);
    expect(short.cost.shortRecordKm).toBeCloseTo(40, 1);
    expect(short.cost.temperaturesKm).toBe(40);
    expect(far.cost.totalKm).toBeCloseTo(30, 2);
    expect(near.suggested).toBe('FAR');
    expect(near.reason).toMatch(
      /30 km away.*The nearest, NOWHERE at 10 km, lies at a less similar height\.$/,
    );
  });

  it('counts gaps and how long ago a record ended', () => {
    const { stations, suggested } = nearestStations(
      [
        north(10, 'GAPS', { rainDays: 13_149 }),
        north(12, 'ENDED', { firstDate: '1951-01-01', lastDate: '2000-12-31', rainDays: 18_263 }),
        north(28, 'GOOD'),
      ],
      place,
    );
    const costs = Object.fromEntries(stations.map(({ id, cost }) => [id, cost]));
    expect(costs.GAPS.gapsKm).toBeCloseTo(30, 1);
    expect(costs.ENDED.endedKm).toBe(60);
    expect(suggested).toBe('GOOD');
  });

  it('never takes invented stations, counts those without a position, and suggests none that will not do', () => {
    const none = nearestStations(
      [
        north(5, 'MADE-UP', { invented: true }),
        north(5, 'UNPLACED', { longitudeDeg: null }),
        north(5, 'YOUNG', { firstDate: '2018-01-01', rainDays: 1096 }),
        north(200, 'AWAY'),
      ],
      place,
    );
    expect(none.stations.map(({ id }) => id)).toEqual(['YOUNG', 'AWAY']);
    expect(none).toMatchObject({ suggested: null, withoutPosition: 1 });
    expect(none.reason).toContain('No station within 150 km has 10 years of rain');
    expect(nearestStations([], place)).toMatchObject({ suggested: null, stations: [] });
  });

  it('keeps the suggested station in a list cut short, and refuses a place that is none', () => {
    const many = [1, 2, 3].map((km) => north(km, `Y${km}`, { firstDate: '2018-01-01', rainDays: 1096 }));
    const near = nearestStations([...many, north(9, 'GOOD')], place, 2);
    expect(near.stations.map(({ id }) => id)).toEqual(['Y1', 'GOOD']);
    expect(() => nearestStations(many, { latitudeDeg: 95, longitudeDeg: 0 })).toThrow(OutOfRangeError);
  });
});

describe('stations that lend', () => {
  const own = extent({ id: 'OWN', temperatureDays: 0 });
  const span = { firstDay: parseIsoDate('1981-01-01'), lastDay: parseIsoDate('2020-12-31') };

  it('temperatures: the nearest within 100 km with twenty years beside half of the record', () => {
    const stations = [
      own,
      north(10, 'FEW', { temperatureDays: 7299 }),
      north(20, 'BEFORE', { firstDate: '1941-01-01', lastDate: '1999-12-31' }),
      north(40, 'FIT'),
      north(60, 'FIT-TOO'),
    ];
    expect(companionStation(own, span, stations)).toMatchObject({ station: { id: 'FIT' } });
    expect(companionStation(own, span, [own, north(101, 'FAR')])).toBeNull();
    expect(companionStation(own, span, [north(20, 'MADE-UP', { invented: true })])).toBeNull();
    expect(companionStation({ ...own, longitudeDeg: null }, span, stations)).toBeNull();
  });

  it('rain: the nearest four within 50 km with ten years beside the record', () => {
    const stations = [
      own,
      north(5, 'A', { rainDays: 3649 }),
      north(6, 'B', { lastDate: '1990-06-30' }),
      ...[30, 10, 40, 20, 45].map((km) => north(km, `N${km}`)),
      north(51, 'FAR'),
    ];
    expect(rainNeighbours(own, span, stations).map(({ station }) => station.id)).toEqual([
      ...['N10', 'N20', 'N30', 'N40'],
    ]);
  });
});
