import { MEASURE_NAMES, MEASURES, type Measure } from './measures.ts';

/** What the map and the order of the table speak of. */
export function MeasureSwitch({ show, choose }: { show: Measure; choose: (measure: Measure) => void }) {
  return (
    <fieldset class="measures">
      <legend class="unseen">What the map shows</legend>
      {MEASURES.map((measure) => (
        <button
          key={measure}
          type="button"
          aria-pressed={show === measure}
          data-testid={`show-${measure}`}
          onClick={() => choose(measure)}
        >
          {MEASURE_NAMES[measure]}
        </button>
      ))}
    </fieldset>
  );
}
