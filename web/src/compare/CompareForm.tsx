import type { AssumptionEntry } from '../../../src/schema/assumptionList.ts';
import { AssumptionBlanks } from '../question/AssumptionBlanks.tsx';
import { useForm } from '../question/FormContext.ts';
import { SoilBlanks } from '../question/groundBlanks.tsx';
import { MoreFieldBlanks } from '../question/MoreFieldBlanks.tsx';
import { MoreSprayBlanks } from '../question/MoreSprayBlanks.tsx';
import { OtherTreatmentBlanks } from '../question/OtherTreatmentBlanks.tsx';
import {
  AppliedOnBlank,
  CropBlank,
  OddsLimitBlank,
  PlantOnBlank,
  RateBlank,
  StationBlank,
} from '../question/sharedBlanks.tsx';
import { ProductBlank } from '../question/sprayBlanks.tsx';
import { WeatherBlanks } from '../question/WeatherBlanks.tsx';
import { Fold } from '../shell/Fold.tsx';

const CONTROL: ReadonlySet<AssumptionEntry['key']> = new Set([
  'controlFractionLeft',
  'activationRainMm',
  'activationDays',
]);

/** The question as a sentence: which residual, sprayed when, before which crop? */
export function CompareForm() {
  const { question } = useForm();
  return (
    <form class="question" aria-label="The question" onSubmit={(event) => event.preventDefault()}>
      <p class="question-lead">Which residual could go on,</p>
      <AppliedOnBlank lead="sprayed on" />
      <RateBlank lead="each at" />
      <CropBlank lead="before" />
      <PlantOnBlank lead="planting" appliedOn={question.appliedOn} />
      <SoilBlanks lead="on" />
      <StationBlank lead="near" />
      <OddsLimitBlank lead="I accept" />
      <ProductBlank lead="beside" dropped={{ evidence: undefined }} />
      <fieldset class="blank-set" data-testid="control-assumptions">
        <legend>What counts as weed control</legend>
        <AssumptionBlanks wanted={(key) => CONTROL.has(key)} />
      </fieldset>
      <Fold title="More about the field">{() => <MoreFieldBlanks />}</Fold>
      <Fold title="More about the spraying">{() => <MoreSprayBlanks ofOne={false} />}</Fold>
      <Fold title="Other treatments of the field">{() => <OtherTreatmentBlanks />}</Fold>
      <Fold title="Weather to reckon with">{() => <WeatherBlanks />}</Fold>
      <Fold title="Assumptions of the model">
        {() => <AssumptionBlanks wanted={(key) => !CONTROL.has(key)} />}
      </Fold>
    </form>
  );
}
