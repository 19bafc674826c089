import { AssumptionBlanks } from '../question/AssumptionBlanks.tsx';
import { Blank, blankIds } from '../question/Blank.tsx';
import { DateBlank } from '../question/DateBlank.tsx';
import { useForm } from '../question/FormContext.ts';
import { CountryBlank, GroundBlanks, SoilBlanks } from '../question/groundBlanks.tsx';
import { IntervalBlank } from '../question/IntervalBlank.tsx';
import { MoreSprayBlanks } from '../question/MoreSprayBlanks.tsx';
import {
  AppliedOnBlank,
  CropBlank,
  OddsLimitBlank,
  PlantOnBlank,
  RateBlank,
} from '../question/sharedBlanks.tsx';
import { ProductBlank } from '../question/sprayBlanks.tsx';
import { useBlank } from '../question/useBlank.ts';
import { Fold } from '../shell/Fold.tsx';
import { useDates } from '../units/useDates.ts';
import { type Box, readBox, readStates, sayBox } from './readWhere.ts';
import type { RegionAsked } from './regionAddress.ts';
import { SoilsBlank } from './SoilsBlank.tsx';

type Where = Pick<RegionAsked, 'states' | 'box' | 'soils'>;

interface RegionFormProps {
  readonly asked: RegionAsked;
  readonly where: (where: Partial<Where>) => void;
}

/** The question as a sentence: after this treatment, where is this crop safe on that date? */
export function RegionForm({ asked, where }: RegionFormProps) {
  const dates = useDates();
  const { question, change } = useForm();
  return (
    <form class="question" aria-label="The question" onSubmit={(event) => event.preventDefault()}>
      <ProductBlank lead="After" dropped={{ evidence: undefined }} />
      <AppliedOnBlank lead="sprayed on" />
      <RateBlank lead="at" />
      <CropBlank lead="where is" />
      <PlantOnBlank lead="safe, planted" appliedOn={question.appliedOn} />
      <SoilBlanks lead="on" />
      <StatesBlank states={asked.states} commit={(states) => where({ states })} />
      <DateBlank
        id="blank-asOf"
        field="asOf"
        lead="seen up to"
        value={question.asOf}
        optional
        echo={question.asOf ? dates.withWeekday(question.asOf) : 'Empty: planning, nothing is observed yet.'}
        commit={(asOf) => change({ asOf })}
      />
      <IntervalBlank used={null} />
      <OddsLimitBlank lead="I accept" />
      <Fold title="A box instead of states">
        {() => <BoxBlank box={asked.box} commit={(box) => where({ box })} />}
      </Fold>
      <Fold title="A soil for each station">
        {() => <SoilsBlank soils={asked.soils} commit={(soils) => where({ soils })} />}
      </Fold>
      <Fold title="More about the ground">
        {() => (
          <div class="blank-list">
            <CountryBlank />
            <GroundBlanks />
          </div>
        )}
      </Fold>
      <Fold title="More about the spraying">{() => <MoreSprayBlanks />}</Fold>
      <Fold title="Assumptions of the model">{() => <AssumptionBlanks />}</Fold>
    </form>
  );
}

function StatesBlank({
  states,
  commit,
}: {
  states: Where['states'];
  commit: (states: Where['states']) => void;
}) {
  const { input, problem } = useBlank<Where['states']>({
    field: 'states',
    shown: states?.join(', ') ?? '',
    read: readStates,
    commit,
  });
  const remark = 'Empty: every station that is here. Else such as MT, ND.';
  return (
    <Blank id="blank-states" lead="in" label="States" remark={remark} problem={problem}>
      <input
        {...blankIds('blank-states', { remark, problem })}
        {...input}
        type="text"
        autocomplete="off"
        spellcheck={false}
        data-testid="states"
      />
    </Blank>
  );
}

function BoxBlank({ box, commit }: { box: Box | null; commit: (box: Box | null) => void }) {
  const { input, problem } = useBlank<Box | null>({
    field: 'box',
    shown: box === null ? '' : sayBox(box),
    read: readBox,
    commit,
  });
  const remark = 'West, south, east, north in degrees, such as -112, 45, -104, 49.';
  return (
    <Blank id="blank-box" label="Box" remark={remark} problem={problem}>
      <input
        {...blankIds('blank-box', { remark, problem })}
        {...input}
        type="text"
        autocomplete="off"
        spellcheck={false}
        data-testid="box"
      />
    </Blank>
  );
}
