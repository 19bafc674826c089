import { oddsStep } from '../../../src/chart/oddsScale.ts';

/** Carryover odds as a number in twenty on their colour; small ones keep their end open. */
export function OddsChip({ odds }: { odds: number }) {
  return (
    <span class="odds-chip" data-step={oddsStep(odds)}>
      {odds < 0.025 ? '<1' : odds > 0.975 ? '>19' : Math.round(odds * 20)}
    </span>
  );
}
