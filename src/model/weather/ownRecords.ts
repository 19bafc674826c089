import { RAIN_GAUGE } from '../../schema/codes.ts';

/** Rain or irrigation of one day in the field. */
export interface OwnAmount {
  /** Day number. */
  readonly day: number;
  /** Amount [mm], >= 0. */
  readonly mm: number;
}

/**
 * Puts the grower's own gauge in place of the station's rain on its days, in place, and marks them RAIN_GAUGE. [mm]
 *
 * Source     rule of our own: what was measured in the field wins over the station
 * Valid      amounts >= 0; days outside the run are passed over
 * @returns how many entries lay inside the run
 */
export function applyOwnGauge(
  rainMm: Float64Array,
  origin: Uint8Array,
  firstDay: number,
  gauge: readonly OwnAmount[],
): number {
  let used = 0;
  for (const { day, mm } of gauge) {
    const index = day - firstDay;
    if (index < 0 || index >= rainMm.length) continue;
    rainMm[index] = mm;
    origin[index] = RAIN_GAUGE;
    used++;
  }
  return used;
}

/** Irrigation by days since a first day; entries of one day add up. */
export interface IrrigationCourse {
  /** Offset of the first entry [d]; may be negative. */
  readonly firstOffset: number;
  /** Amounts from that offset on [mm]; empty where there is none. */
  readonly amountsMm: Float64Array;
}

/** Days before the first day beyond which irrigation no longer tells in the top soil. [d] */
const LONGEST_LEAD_DAYS = 366;

/**
 * Lines irrigation entries up with a season. [mm by day]
 *
 * @param startDay day number of offset 0, the first application
 * @param horizonDays days from there that are looked at; later entries are left out, as are those more than 366 days before
 */
export function irrigationCourse(
  entries: readonly OwnAmount[],
  startDay: number,
  horizonDays: number,
): IrrigationCourse {
  const near = entries.filter(({ day, mm }) => {
    const offset = day - startDay;
    return mm > 0 && offset >= -LONGEST_LEAD_DAYS && offset < horizonDays;
  });
  if (near.length === 0) return { firstOffset: 0, amountsMm: new Float64Array(0) };
  const offsets = near.map(({ day }) => day - startDay);
  const firstOffset = Math.min(...offsets);
  const amountsMm = new Float64Array(Math.max(...offsets) - firstOffset + 1);
  for (const { day, mm } of near) amountsMm[day - startDay - firstOffset] += mm;
  return { firstOffset, amountsMm };
}

/** Irrigation at an offset from the first application. [mm] */
export const irrigationAt = ({ firstOffset, amountsMm }: IrrigationCourse, offset: number): number =>
  amountsMm[offset - firstOffset] ?? 0;
