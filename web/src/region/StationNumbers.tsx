import { keepTogether } from '../answer/oddsInWords.ts';
import type { QuestionInput, RegionRow } from '../api/contract.ts';
import { encodeAddress } from '../question/address.ts';
import type { Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { stationInWords } from './regionWords.ts';

interface StationNumbersProps {
  readonly picked: RegionRow | null;
  readonly question: QuestionInput;
  readonly units: Units;
}

/** The numbers of the station that was pressed, and the way to its whole answer. */
export function StationNumbers({ picked, question, units }: StationNumbersProps) {
  const dates = useDates();
  if (picked === null) {
    return <p class="station-numbers">Press a mark, or a name in the table, for the numbers of a station.</p>;
  }
  const { gauge: _g, irrigation: _i, evidence: _e, ...rest } = question;
  return (
    <p class="station-numbers" data-testid="station-numbers">
      {keepTogether(stationInWords(picked, units, dates))}{' '}
      {picked.figures !== null && (
        <a href={`/${encodeAddress({ ...rest, station: picked.station }, units)}`}>The whole answer there</a>
      )}
    </p>
  );
}
