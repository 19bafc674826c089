import { rangeWords } from '../../../src/chart/saidWords.ts';
import type { Answer } from '../api/contract.ts';

/** Range of the odds and the years behind them. */
export function OddsLine({ answer: { oddsAtPlanting, oddsRange, weather } }: { answer: Answer }) {
  if (oddsAtPlanting === null || oddsRange === null) return null;
  const years = `${oddsRange.years} years of ${weather.station.invented ? 'invented ' : ''}weather`;
  return (
    <p class="odds-line">
      {years} put the odds {rangeWords(oddsRange)}.
      {oddsRange.years < 20 && ' So few years leave room for more.'}
    </p>
  );
}
