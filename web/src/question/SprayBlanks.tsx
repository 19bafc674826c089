import { QUESTION_DEFAULTS } from './defaults.ts';
import { useForm } from './FormContext.ts';
import { LabelEntryBlank } from './LabelEntryBlank.tsx';
import { NumberBlank } from './NumberBlank.tsx';

/** What a question can say about the spraying beyond date and rate. */
export function SprayBlanks() {
  const { question: q, change } = useForm();
  const d = QUESTION_DEFAULTS;
  return (
    <div class="blank-list">
      <LabelEntryBlank />
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
    </div>
  );
}
