import { AssumptionBlanks } from '../question/AssumptionBlanks.tsx';
import { DateBlank } from '../question/DateBlank.tsx';
import { SoilBlanks } from '../question/groundBlanks.tsx';
import { MoreFieldBlanks } from '../question/MoreFieldBlanks.tsx';
import { MoreSprayBlanks } from '../question/MoreSprayBlanks.tsx';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { OtherTreatmentBlanks } from '../question/OtherTreatmentBlanks.tsx';
import { AppliedOnBlank, OddsLimitBlank, RateBlank, StationBlank } from '../question/sharedBlanks.tsx';
import { ProductBlank } from '../question/sprayBlanks.tsx';
import { WeatherBlanks } from '../question/WeatherBlanks.tsx';
import { Fold } from '../shell/Fold.tsx';
import { useDates } from '../units/useDates.ts';
import { CropListBlank } from './CropListBlank.tsx';
import type { CropsAsked, Span } from './cropsAddress.ts';

interface CropsFormProps {
  readonly asked: CropsAsked;
  readonly look: (part: Partial<CropsAsked>) => void;
}

/** The question as a sentence: after this treatment, which crops can go in when? */
export function CropsForm({ asked, look }: CropsFormProps) {
  const dates = useDates();
  const { span } = asked;
  const spanned = (part: Partial<Span>) => look({ span: { ...span, ...part } });
  return (
    <form class="question" aria-label="The question" onSubmit={(event) => event.preventDefault()}>
      <ProductBlank lead="I sprayed" dropped={{ evidence: undefined }} />
      <AppliedOnBlank lead="on" />
      <RateBlank lead="at" />
      <SoilBlanks lead="on" />
      <StationBlank lead="near" />
      <DateBlank
        id="blank-plantFrom"
        field="plantFrom"
        lead="Planting"
        value={span.plantFrom}
        echo={dates.weekday(span.plantFrom)}
        testId="plant-from"
        commit={(plantFrom) => plantFrom && spanned({ plantFrom })}
      />
      <DateBlank
        id="blank-plantTo"
        field="plantTo"
        lead="to"
        value={span.plantTo}
        echo={dates.weekday(span.plantTo)}
        testId="plant-to"
        commit={(plantTo) => plantTo && spanned({ plantTo })}
      />
      <NumberBlank
        field="stepDays"
        lead="every"
        unit="days"
        value={span.stepDays}
        min={1}
        max={92}
        whole
        commit={(stepDays) => stepDays !== undefined && spanned({ stepDays })}
      />
      <CropListBlank crops={asked.crops} commit={(crops) => look({ crops })} />
      <OddsLimitBlank lead="I accept" />
      <Fold title="More about the field">{() => <MoreFieldBlanks />}</Fold>
      <Fold title="More about the spraying">{() => <MoreSprayBlanks />}</Fold>
      <Fold title="Other treatments of the field">{() => <OtherTreatmentBlanks />}</Fold>
      <Fold title="Weather to reckon with">{() => <WeatherBlanks />}</Fold>
      <Fold title="Assumptions of the model">{() => <AssumptionBlanks />}</Fold>
    </form>
  );
}
