/** Median of some figures, the upper one of two in the middle. */
export function medianOf(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

/** Prints one figure as a JSON line: name, value, unit, and what it was measured on. */
export function report(name: string, value: number, unit: string, more: Record<string, unknown> = {}): void {
  console.log(JSON.stringify({ name, value: Number(value.toPrecision(4)), unit, ...more }));
}
