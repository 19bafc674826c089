/** Whether a value is missing. @param values NaN where missing */
export function hasGap(values: Float64Array): boolean {
  for (let day = 0; day < values.length; day++) if (Number.isNaN(values[day])) return true;
  return false;
}
