import { RAIN_NEIGHBOUR, RAIN_OBSERVED } from '../../schema/codes.ts';
import { calendarSlots, monthOfSlot } from './calendarSlot.ts';
import { type NeighbourAmount, normalRatioAmount } from './normalRatio.ts';

/** Days of a calendar month that gauge and neighbour must share for their normals to count: some ten months. [d] */
const LEAST_SHARED_DAYS = 280;

/** A neighbouring station's own daily rain. */
export interface NeighbourRain {
  readonly stationId: string;
  /** Day number of index 0. */
  readonly firstDay: number;
  /** Daily values of its own [mm]; NaN where missing. */
  readonly rainMm: Float64Array;
}

/**
 * Fills gaps in a station's rain from its neighbours, in place, and marks them RAIN_NEIGHBOUR. [mm]
 *
 * Equation   {@link normalRatioAmount} for each missing day, over the neighbours that measured that day
 * Symbols    the normals of a pair of stations are their mean daily rain of the calendar month over the days on
 *            which both measured, so that unlike years do not bias the ratio
 * Valid      a neighbour counts in a month with at least 280 shared days and a mean above 0; days that no such
 *            neighbour measured stay missing. Unlike hours of reading can put rain on the day beside it
 * Source     normal-ratio method; the pairing by shared days is ours
 * Checked    test/published/neighbours.json (C-NR-1) for the ratio, test/model/neighbourRain.test.ts
 *
 * @param rainMm NaN where missing; changed in place
 * @param origin RAIN_OBSERVED or RAIN_SPREAD per day; changed in place
 * @returns how many days each neighbour helped to fill, in the order given
 */
export function fillFromNeighbours(
  rainMm: Float64Array,
  origin: Uint8Array,
  firstDay: number,
  neighbours: readonly NeighbourRain[],
): number[] {
  const slots = calendarSlots(firstDay, rainMm.length);
  const normals = neighbours.map((neighbour) => sharedNormals(rainMm, origin, firstDay, slots, neighbour));
  const helped = neighbours.map(() => 0);
  for (let day = 0; day < rainMm.length; day++) {
    if (!Number.isNaN(rainMm[day])) continue;
    const month = monthOfSlot(slots[day]);
    const amounts: NeighbourAmount[] = [];
    for (const [index, neighbour] of neighbours.entries()) {
      const amount = neighbour.rainMm[firstDay + day - neighbour.firstDay] ?? Number.NaN;
      const normal = normals[index][month - 1];
      if (Number.isNaN(amount) || normal === null) continue;
      amounts.push({ ...normal, amount });
      helped[index]++;
    }
    if (amounts.length === 0) continue;
    rainMm[day] = normalRatioAmount(amounts);
    origin[day] = RAIN_NEIGHBOUR;
  }
  return helped;
}

type SharedNormal = Pick<NeighbourAmount, 'gaugeNormal' | 'normal'>;

/** Mean daily rain of both stations over the days they share, January to December; null where too few. */
function sharedNormals(
  rainMm: Float64Array,
  origin: Uint8Array,
  firstDay: number,
  slots: Uint16Array,
  neighbour: NeighbourRain,
): (SharedNormal | null)[] {
  const sums = Array.from({ length: 12 }, () => ({ own: 0, other: 0, days: 0 }));
  for (let day = 0; day < rainMm.length; day++) {
    const other = neighbour.rainMm[firstDay + day - neighbour.firstDay] ?? Number.NaN;
    if (Number.isNaN(rainMm[day]) || Number.isNaN(other) || origin[day] !== RAIN_OBSERVED) continue;
    const sum = sums[monthOfSlot(slots[day]) - 1];
    sum.own += rainMm[day];
    sum.other += other;
    sum.days++;
  }
  return sums.map(({ own, other, days }) =>
    days < LEAST_SHARED_DAYS || other === 0 ? null : { gaugeNormal: own / days, normal: other / days },
  );
}
