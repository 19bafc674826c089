import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { SubjectOf, useSubject } from '../question/subject.tsx';
import { type Clause, KINDS, type Kind } from './clauseKinds.ts';
import { KindBlanks } from './KindBlanks.tsx';

interface ClauseBlanksProps {
  readonly field: string;
  readonly clauses: readonly Clause[];
  readonly commit: (clauses: Clause[]) => void;
  readonly forget: (prefix: string) => void;
}

const MOST = 12;
const ANOTHER = '';

/** The conditions of an interval that can be judged: against weather, soil, rate, or by what the user knows. */
export function ClauseBlanks({ field, clauses, commit, forget }: ClauseBlanksProps) {
  return (
    <div class="wide">
      {clauses.map((clause, index) => (
        <fieldset class="blank-set" key={`${index}-${clause.kind}`} data-testid="clause">
          <legend>{KINDS[clause.kind].title}</legend>
          <div class="blank-grid">
            <SubjectOf<Clause>
              of={clause}
              field={`${field}.${index}`}
              set={(part) =>
                commit(clauses.map((other, at) => (at === index ? ({ ...other, ...part } as Clause) : other)))
              }
            >
              <KindBlanks kind={clause.kind} />
              <OtherwiseBlanks />
            </SubjectOf>
          </div>
          <button
            type="button"
            class="quiet"
            onClick={() => {
              forget(`${field}.`);
              commit(clauses.filter((_, at) => at !== index));
            }}
          >
            Remove this condition
          </button>
        </fieldset>
      ))}
      {clauses.length < MOST && (
        <ChoiceBlank
          key={clauses.length}
          field={`${field}.add`}
          label="The label makes a condition that can be judged"
          value={ANOTHER}
          options={Object.entries(KINDS).map(([value, { title }]) => ({ value, text: title }))}
          commit={(kind) => commit([...clauses, KINDS[kind as Kind].fresh])}
        />
      )}
    </div>
  );
}

const OTHERWISE = [
  { value: 'not allowed', text: 'the crop waits until it is met' },
  { value: 'months', text: 'a longer interval holds' },
  { value: 'bioassay', text: 'a field bioassay decides' },
  { value: 'not stated', text: 'the label does not say how long' },
];
const LONGER_MONTHS = 18;

/** What holds where the condition is not met. */
function OtherwiseBlanks() {
  const { of, set, at } = useSubject<Pick<Clause, 'ifNot'>>();
  const { ifNot } = of;
  const unit = typeof ifNot === 'object' && 'days' in ifNot ? 'days' : 'months';
  return (
    <>
      <ChoiceBlank
        field={at('ifNot')}
        value={typeof ifNot === 'object' ? 'months' : ifNot}
        options={OTHERWISE}
        commit={(chosen) =>
          set({ ifNot: chosen === 'months' ? { months: LONGER_MONTHS } : (chosen as Clause['ifNot']) })
        }
      />
      {typeof ifNot === 'object' && (
        <NumberBlank
          field={at(`ifNot.${unit}`)}
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
      )}
    </>
  );
}
