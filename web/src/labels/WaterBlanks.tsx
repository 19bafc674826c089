import type { LabelEntry } from '../api/contract.ts';
import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { rainUnit, type Units } from '../units/units.ts';

type Clause = LabelEntry['intervals'][number]['clauses'][number];
type WaterClause = Extract<Clause, { kind: 'water' }>;
type IfNot = WaterClause['ifNot'];

interface WaterBlanksProps {
  readonly field: string;
  readonly clauses: readonly Clause[];
  readonly units: Units;
  readonly commit: (clauses: Clause[]) => void;
}

const UNTIL = [
  { value: 'planting', text: 'planting' },
  { value: 'interval end', text: 'the end of the interval' },
];
const WATERS = [
  { value: 'rain', text: 'rain alone' },
  { value: 'rain and irrigation', text: 'rain and irrigation' },
];
const OTHERWISE = [
  { value: 'not allowed', text: 'the crop waits until it is met' },
  { value: 'months', text: 'a longer interval holds' },
  { value: 'bioassay', text: 'a field bioassay decides' },
  { value: 'not stated', text: 'the label does not say how long' },
];
const LONGER_MONTHS = 18;

/** About an inch. [mm] */
const USUAL_MM = 25.4;

const NEW: WaterClause = {
  kind: 'water',
  minMm: USUAL_MM,
  counts: 'rain and irrigation',
  window: { from: 'application', to: 'planting' },
  grants: 'interval',
  ifNot: 'not allowed',
};

/** Water that the label asks for within the interval: judged against the weather that falls. */
export function WaterBlanks({ field, clauses, units, commit }: WaterBlanksProps) {
  const at = clauses.findIndex(({ kind }) => kind === 'water');
  const clause = clauses[at] as WaterClause | undefined;
  const others = clauses.length - (clause === undefined ? 0 : 1);
  const set = (part: Partial<WaterClause>) =>
    commit(clauses.map((other, index) => (index === at ? ({ ...other, ...part } as Clause) : other)));
  return (
    <div class="wide">
      {clause === undefined ? (
        <button type="button" class="quiet" data-testid="add-water" onClick={() => commit([...clauses, NEW])}>
          The label asks for rain or irrigation
        </button>
      ) : (
        <fieldset class="blank-set">
          <legend>Water the label asks for</legend>
          <div class="blank-grid">
            <NumberBlank
              field={`${field}.${at}.minMm`}
              label="At least"
              unit={rainUnit(units)}
              quantity="rain"
              value={clause.minMm}
              min={0}
              max={5000}
              aboveMin
              commit={(minMm) => set({ minMm: minMm ?? USUAL_MM })}
            />
            <ChoiceBlank
              field={`${field}.${at}.counts`}
              label="What counts"
              value={clause.counts}
              options={WATERS}
              commit={(counts) => set({ counts: counts as WaterClause['counts'] })}
            />
            <ChoiceBlank
              field={`${field}.${at}.window`}
              label={
                clause.window.from === 'application' ? 'From application to' : `From ${clause.window.from} to`
              }
              value={clause.window.to}
              options={[
                ...UNTIL,
                ...(UNTIL.some(({ value }) => value === clause.window.to)
                  ? []
                  : [{ value: clause.window.to, text: clause.window.to }]),
              ]}
              commit={(to) => set({ window: { ...clause.window, to: to as WaterClause['window']['to'] } })}
            />
            <ChoiceBlank
              field={`${field}.${at}.ifNot`}
              label="If it does not come"
              value={typeof clause.ifNot === 'object' ? 'months' : clause.ifNot}
              options={OTHERWISE}
              commit={(otherwise) =>
                set({ ifNot: otherwise === 'months' ? { months: LONGER_MONTHS } : (otherwise as IfNot) })
              }
            />
            {typeof clause.ifNot === 'object' && (
              <LongerBlank {...{ field: `${field}.${at}.ifNot`, clause, set }} />
            )}
          </div>
          <button
            type="button"
            class="quiet"
            onClick={() => commit(clauses.filter((_, index) => index !== at))}
          >
            Remove the water condition
          </button>
        </fieldset>
      )}
      {others > 0 && (
        <p class="blank-remark">
          {others === 1 ? 'One more condition is' : `${others} more conditions are`} kept and judged; such as
          came with a table are changed there.
        </p>
      )}
    </div>
  );
}

/** The interval that holds where the water does not come. */
function LongerBlank(props: {
  field: string;
  clause: WaterClause;
  set: (part: Partial<WaterClause>) => void;
}) {
  const { field, clause, set } = props;
  const { ifNot } = clause;
  if (typeof ifNot !== 'object') return null;
  const unit = 'months' in ifNot ? 'months' : 'days';
  return (
    <NumberBlank
      field={`${field}.${unit}`}
      label="The longer interval"
      unit={unit}
      value={'months' in ifNot ? ifNot.months : ifNot.days}
      min={0}
      max={unit === 'months' ? 120 : 3660}
      whole={unit === 'days'}
      commit={(length) =>
        length !== undefined && set({ ifNot: unit === 'months' ? { months: length } : { days: length } })
      }
    />
  );
}
