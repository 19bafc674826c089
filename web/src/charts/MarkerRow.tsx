import { oddsWord, sayOdds } from '../answer/oddsInWords.ts';
import type { QuestionInput } from '../api/contract.ts';
import { dayOf, daysBetween, isoOf } from '../question/calendar.ts';
import { DateBlank } from '../question/DateBlank.tsx';
import { useDates } from '../units/useDates.ts';
import type { MarkerMoves } from './useMarker.ts';

/** The planting date as a blank between two buttons: the sure way to move the marker. */
export function MarkerRow({
  question,
  odds,
  moves,
}: {
  question: QuestionInput;
  odds: number;
  moves: MarkerMoves;
}) {
  const dates = useDates();
  const { plantOn, appliedOn } = question;
  const step = (days: number) => moves.commit(isoOf(dayOf(plantOn) + days));
  const after = daysBetween(appliedOn, plantOn);
  return (
    <div class="marker-row">
      <DateBlank
        id="marker-plantOn"
        field="plantOn"
        draft="marker.plantOn"
        value={plantOn}
        testId="plant-date"
        commit={(date) => date && moves.commit(date)}
        echo={`${dates.withWeekday(plantOn)}, ${after} days after spraying`}
        before={
          <button
            type="button"
            class="step"
            data-testid="plant-earlier"
            aria-label="One day earlier"
            onClick={() => step(-1)}
          >
            −
          </button>
        }
        after={
          <>
            <button
              type="button"
              class="step"
              data-testid="plant-later"
              aria-label="One day later"
              onClick={() => step(1)}
            >
              +
            </button>
            <output class="marker-odds" for="marker-plantOn">
              {sayOdds(odds)}, {oddsWord(odds)}
            </output>
          </>
        }
      />
    </div>
  );
}
