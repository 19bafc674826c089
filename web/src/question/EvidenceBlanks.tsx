import { useDates } from '../units/useDates.ts';
import { ChoiceBlank } from './ChoiceBlank.tsx';
import { DateBlank } from './DateBlank.tsx';
import { refusalOf, useBlanks } from './FormContext.ts';
import { type FindingInput, type Report, reportedAs, reportOf, type SoilTestInput } from './findings.ts';
import { NumberBlank } from './NumberBlank.tsx';
import { useSubject } from './subject.tsx';

const RESULTS = [
  { value: 'clean', text: 'plants stayed clean' },
  { value: 'hurt', text: 'plants were hurt' },
];

const REPORTS: readonly { value: Report; text: string }[] = [
  { value: 'share', text: 'residue, as a share of the full dose' },
  { value: 'ppm', text: 'residue, in ppm of a depth' },
  { value: 'none-share', text: 'none; its limit is a share of the full dose' },
  { value: 'none-ppm', text: 'none; its limit is in ppm of a depth' },
];

/**
 * Soil tests and bioassays of the season, one after another.
 * @param on date that a new one begins with
 */
export function EvidenceBlanks({ on }: { on: string }) {
  const { of, set: change, forgetTyped, refusal } = useSubject<{ evidence?: FindingInput[] }>();
  const findings = of.evidence ?? [];
  const set = (next: readonly FindingInput[]) => change({ evidence: [...next] });
  const problem = refusalOf(refusal, 'evidence');

  function remove(gone: number): void {
    // What could not be read belongs to a place in the list, and places move up.
    forgetTyped('evidence.');
    set(findings.filter((_, index) => index !== gone));
  }

  return (
    <>
      {findings.length === 0 && (
        <p class="blank-remark">
          None so far. A soil test by a laboratory, or plants grown in soil of the field, move the odds.
        </p>
      )}
      {findings.map((finding, index) => (
        <FindingBlanks
          key={`${index}-${finding.kind}`}
          finding={finding}
          index={index}
          commit={(next) => set(findings.map((other, at) => (at === index ? next : other)))}
          remove={() => remove(index)}
        />
      ))}
      {problem && <p class="blank-problem">{problem}</p>}
      <div class="add-row">
        <button
          type="button"
          class="small-button"
          data-testid="add-clean-bioassay"
          onClick={() => set([...findings, { kind: 'bioassay', on, injured: false }])}
        >
          Add a bioassay that stayed clean
        </button>
        <button
          type="button"
          class="small-button"
          data-testid="add-hurt-bioassay"
          onClick={() => set([...findings, { kind: 'bioassay', on, injured: true }])}
        >
          Add a bioassay that hurt plants
        </button>
        <button
          type="button"
          class="small-button"
          data-testid="add-soil-test"
          onClick={() => set([...findings, { kind: 'soil test', on }])}
        >
          Add a soil test
        </button>
      </div>
    </>
  );
}

interface FindingBlanksProps {
  readonly finding: FindingInput;
  readonly index: number;
  readonly commit: (finding: FindingInput) => void;
  readonly remove: () => void;
}

function FindingBlanks({ finding, index, commit, remove }: FindingBlanksProps) {
  const dates = useDates();
  const field = (name: string) => `evidence.${index}.${name}`;
  const title = `${finding.kind === 'bioassay' ? 'Bioassay' : 'Soil test'} ${index + 1}`;
  return (
    <fieldset class="blank-set finding" data-testid="finding">
      <legend>{title}</legend>
      <div class="blank-list">
        <DateBlank
          id={`blank-${field('on')}`}
          field={field('on')}
          label={finding.kind === 'bioassay' ? 'Soil taken or strip sown on' : 'Sampled on'}
          value={finding.on}
          echo={finding.on && dates.withWeekday(finding.on)}
          commit={(date) => date && commit({ ...finding, on: date })}
        />
        {finding.kind === 'bioassay' ? (
          <ChoiceBlank
            field={field('injured')}
            value={finding.injured ? 'hurt' : 'clean'}
            options={RESULTS}
            commit={(result) => commit({ ...finding, injured: result === 'hurt' })}
          />
        ) : (
          <SoilTestBlanks test={finding} field={field} commit={commit} />
        )}
      </div>
      <button type="button" class="quiet" onClick={remove}>
        Remove {title.toLowerCase()}
      </button>
    </fieldset>
  );
}

interface SoilTestBlanksProps {
  readonly test: SoilTestInput;
  readonly field: (name: string) => string;
  readonly commit: (test: SoilTestInput) => void;
}

function SoilTestBlanks({ test, field, commit }: SoilTestBlanksProps) {
  const { units } = useBlanks();
  const report = reportOf(test);
  const share = report.endsWith('share');
  const figure = test.detected === false ? 'detectionLimit' : share ? 'fractionLeft' : 'concentrationMgPerKg';
  return (
    <>
      <ChoiceBlank
        field={field('detected')}
        value={report}
        options={REPORTS}
        commit={(next) => commit(reportedAs(test, next as Report))}
      />
      <NumberBlank
        key={figure + report}
        field={field(figure)}
        label={test.detected === false ? 'Least that it finds' : 'Residue found'}
        unit={share ? '% of the full dose' : 'ppm (mg/kg)'}
        quantity={share ? 'fraction' : 'plain'}
        value={test[figure]}
        min={0}
        max={share ? 20 : 1000}
        aboveMin
        commit={(value) => commit({ ...test, [figure]: value })}
      />
      {!share && (
        <NumberBlank
          field={field('depthCm')}
          unit={units === 'us' ? 'in' : 'cm'}
          quantity="depth"
          value={test.depthCm}
          min={1}
          max={60}
          commit={(depthCm) => commit({ ...test, depthCm })}
        />
      )}
    </>
  );
}
