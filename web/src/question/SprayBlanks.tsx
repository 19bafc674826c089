import { QUESTION_DEFAULTS } from './defaults.ts';
import { useForm } from './FormContext.ts';
import { NumberBlank } from './NumberBlank.tsx';

/**
 * What a question can say about the spraying beyond date and rate.
 * @param ofOne whether it is about one residual, which may have a half-life of its own
 */
export function SprayBlanks({ ofOne = true }: { ofOne?: boolean }) {
  const { question: q, change } = useForm();
  const d = QUESTION_DEFAULTS;
  return (
    <div class="blank-list">
      <NumberBlank
        field="overlapFactor"
        label="Overlaps and turn rows"
        unit="times the dose"
        value={q.overlapFactor}
        standard={d.overlapFactor}
        min={1}
        max={5}
        commit={(overlapFactor) => change({ overlapFactor })}
      />
      <NumberBlank
        field="canopyFraction"
        label="Spray caught by green leaves"
        unit="%"
        quantity="fraction"
        value={q.canopyFraction}
        standard={d.canopyFraction}
        min={0}
        max={1}
        commit={(canopyFraction) => change({ canopyFraction })}
      />
      {ofOne && (
        <NumberBlank
          field="halfLifeDays"
          label="Field half-life, if you know better"
          unit="days"
          value={q.halfLifeDays}
          min={0}
          max={5000}
          aboveMin
          optional
          remark="Empty: the catalogue’s."
          commit={(halfLifeDays) => change({ halfLifeDays })}
        />
      )}
    </div>
  );
}
