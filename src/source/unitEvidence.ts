import { decimalsIn } from './numberText.ts';

/** A value with where it stands, to be shown as a ground. */
export interface Seen {
  readonly text: string;
  readonly value: number;
  readonly line: number;
}

/** What is kept of the values of one kind while a file is looked through. */
export class Tally {
  count = 0;
  /** Values above zero. */
  wet = 0;
  wetSum = 0;
  /** The first value with the most decimals, and their number. */
  decimals = 0;
  mostDecimals: Seen | null = null;
  highest: Seen | null = null;
  lowest: Seen | null = null;

  add(text: string, value: number, line: number): void {
    const decimals = decimalsIn(text);
    this.count++;
    if (value > 0) {
      this.wet++;
      this.wetSum += value;
    }
    if (decimals > this.decimals) {
      this.decimals = decimals;
      this.mostDecimals = { text, value, line };
    }
    if (this.highest === null || value > this.highest.value) this.highest = { text, value, line };
    if (this.lowest === null || value < this.lowest.value) this.lowest = { text, value, line };
  }
}

/** Everything about a file's values that tells its units. */
export class UnitEvidence {
  readonly rain = new Tally();
  readonly temperature = new Tally();
  /** Totals of several days as they stand. */
  readonly multiDay: { text: string; value: number }[] = [];
}
