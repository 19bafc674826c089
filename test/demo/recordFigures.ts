import { civilDateOf } from '../../src/calendar.ts';
import type { StationRecord } from '../../src/schema/weather.ts';

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Sample standard deviation over the mean. [-] */
export function variation(values: readonly number[]): number {
  const centre = mean(values);
  const square = values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1);
  return Math.sqrt(square) / centre;
}

/** Rain totals by October-to-September year of the days whose month is listed; the last is the year to 2026. [mm] */
export function seasonRainMm(record: StationRecord, months?: readonly number[]): number[] {
  const totals = new Map<number, number>();
  record.rainTenthsMm.forEach((tenths, i) => {
    const { year, month } = civilDateOf(record.firstDay + i);
    if (months !== undefined && !months.includes(month)) return;
    const season = month >= 10 ? year + 1 : year;
    totals.set(season, (totals.get(season) ?? 0) + tenths / 10);
  });
  return [...totals.values()];
}

/** Values of the days in one calendar month that pass a filter. */
export function valuesOfMonth(
  record: StationRecord,
  month: number,
  valueAt: (index: number) => number,
  keep: (index: number) => boolean = () => true,
): number[] {
  const values: number[] = [];
  for (let i = 0; i < record.rainTenthsMm.length; i++) {
    if (civilDateOf(record.firstDay + i).month === month && keep(i)) values.push(valueAt(i));
  }
  return values;
}
