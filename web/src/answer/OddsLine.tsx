import type { Answer } from '../api/contract.ts';

/** Range of the odds and the years behind them. */
export function OddsLine({ answer: { oddsAtPlanting, oddsRange, weather } }: { answer: Answer }) {
  if (oddsAtPlanting === null || oddsRange === null) return null;
  const low = Math.round(oddsRange.low * 20);
  const high = Math.round(oddsRange.high * 20);
  const range = low === high ? `close to ${low} in 20` : `between ${low} and ${high} in 20`;
  const years = `${oddsRange.years} years of ${weather.station.invented ? 'invented ' : ''}weather`;
  return (
    <p class="odds-line">
      {years} put the odds {range}.{oddsRange.years < 20 && ' So few years leave room for more.'}
    </p>
  );
}
