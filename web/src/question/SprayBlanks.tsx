import { QUESTION_DEFAULTS } from './defaults.ts';
import { useForm } from './FormContext.ts';
import { LabelEntryBlank } from './LabelEntryBlank.tsx';
import { NumberBlank } from './NumberBlank.tsx';

/**
 * What a question can say about the spraying beyond date and rate.
 * @param ofOne whether it is about one residual, which may have a half-life of its own
 */
export function SprayBlanks({ ofOne = true }: { ofOne?: boolean }) {
  const { question: q, change, units } = useForm();
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
      {ofOne && (
        <>
          <NumberBlank
            field="rateGramsPerHa"
            label="Active ingredient sprayed, for label lines that go by rate"
            unit={units === 'us' ? 'oz/ac' : 'g/ha'}
            quantity="rate"
            value={q.rateGramsPerHa}
            min={0}
            max={20_000}
            aboveMin
            optional
            remark="Empty: the longest line counts."
            commit={(rateGramsPerHa) => change({ rateGramsPerHa })}
          />
          <NumberBlank
            field="halfLifeDays"
            label="Field half-life, if you know better"
            unit="days"
            value={q.halfLifeDays}
            min={0.1}
            max={5000}
            optional
            remark="Empty: the catalogue’s."
            commit={(halfLifeDays) => change({ halfLifeDays })}
          />
        </>
      )}
    </div>
  );
}
