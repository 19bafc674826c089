import type { FieldRecord } from '../api/contract.ts';

export type FieldPlan = FieldRecord['plans'][number];

/** The crop that comes next: the first planned from a day on, else the last that was planned. */
export function nextPlan(plans: readonly FieldPlan[], from: string): FieldPlan | null {
  const inOrder = [...plans].sort((a, b) => a.plantOn.localeCompare(b.plantOn));
  return inOrder.find(({ plantOn }) => plantOn >= from) ?? inOrder.at(-1) ?? null;
}

/** Today, where the user is. */
export function today(now = new Date()): string {
  const two = (number: number) => `${number}`.padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
