import { AssumptionBlanks } from '../question/AssumptionBlanks.tsx';
import type { AssumptionEntry } from '../question/assumptionList.ts';
import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { FieldBlanks } from '../question/FieldBlanks.tsx';
import { useForm } from '../question/FormContext.ts';
import { SprayBlanks } from '../question/SprayBlanks.tsx';
import {
  AppliedOnBlank,
  CropBlank,
  OddsLimitBlank,
  PlantOnBlank,
  RateBlank,
  SoilBlank,
  StationBlank,
} from '../question/sharedBlanks.tsx';
import { WeatherBlanks } from '../question/WeatherBlanks.tsx';
import { Fold } from '../shell/Fold.tsx';

const CONTROL: ReadonlySet<AssumptionEntry['key']> = new Set([
  'controlFractionLeft',
  'activationRainMm',
  'activationDays',
]);

/** The question as a sentence: which residual, sprayed when, before which crop? */
export function CompareForm() {
  const { question: q, choices, change } = useForm();
  return (
    <form class="question" aria-label="The question" onSubmit={(event) => event.preventDefault()}>
      <p class="question-lead">Which residual could go on,</p>
      <AppliedOnBlank lead="sprayed on" />
      <RateBlank lead="each at" />
      <CropBlank lead="before" />
      <PlantOnBlank lead="planting" />
      <SoilBlank lead="on" />
      <StationBlank lead="near" />
      <OddsLimitBlank lead="I accept" />
      <ChoiceBlank
        field="residual"
        lead="beside"
        label="A residual to bring out"
        value={q.residual}
        options={choices.residuals.map(({ name }) => ({ value: name, text: name }))}
        commit={(residual) => change({ residual, interval: undefined, halfLifeDays: undefined })}
      />
      <fieldset class="blank-set" data-testid="control-assumptions">
        <legend>What counts as weed control</legend>
        <AssumptionBlanks wanted={(key) => CONTROL.has(key)} />
      </fieldset>
      <Fold title="More about the field">{() => <FieldBlanks />}</Fold>
      <Fold title="More about the spraying">{() => <SprayBlanks ofOne={false} />}</Fold>
      <Fold title="Weather to reckon with">{() => <WeatherBlanks />}</Fold>
      <Fold title="Assumptions of the model">
        {() => <AssumptionBlanks wanted={(key) => !CONTROL.has(key)} />}
      </Fold>
    </form>
  );
}
