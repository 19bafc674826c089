import type { Answer } from '../api/contract.ts';

/** An interval that the answer rests on and that nobody has read from a label yet. */
export interface OpenInterval {
  /** Place among the other treatments; null for the one asked about. */
  readonly other: number | null;
  readonly residual: string;
  readonly interval: Answer['inputs']['mainInterval'];
}

/** The intervals that stand between an answer and its sheet. */
export function openIntervals({ inputs }: Answer): OpenInterval[] {
  const { residual, mainInterval, otherTreatments } = inputs;
  const all = [
    { other: null, residual: residual.name, interval: mainInterval },
    ...otherTreatments.map((one, other) => ({ other, residual: one.residual.name, interval: one.interval })),
  ];
  return all.filter(({ interval }) => !interval.confirmed);
}
