import { Fold } from '../shell/Fold.tsx';
import { AssumptionBlanks } from './AssumptionBlanks.tsx';
import { EvidenceBlanks } from './EvidenceBlanks.tsx';
import { useForm } from './FormContext.ts';
import { MoreFieldBlanks } from './MoreFieldBlanks.tsx';
import { MoreSprayBlanks } from './MoreSprayBlanks.tsx';
import { OtherTreatmentBlanks } from './OtherTreatmentBlanks.tsx';
import { WeatherBlanks } from './WeatherBlanks.tsx';
import { ZoneBlanks } from './ZoneBlanks.tsx';

/** Everything a question can say beyond its sentence, in folds. */
export function MoreBlanks() {
  const { question } = useForm();
  const { otherTreatments = [], zones = [] } = question;
  return (
    <>
      <Fold title="More about the field">{() => <MoreFieldBlanks />}</Fold>
      <Fold title="More about the spraying">{() => <MoreSprayBlanks />}</Fold>
      <Fold title={counted('Other treatments of the field', otherTreatments)}>
        {() => <OtherTreatmentBlanks />}
      </Fold>
      <Fold title={counted('Parts with another overlap', zones)}>{() => <ZoneBlanks />}</Fold>
      <Fold title="Soil tests and bioassays">
        {() => <EvidenceBlanks on={question.asOf ?? question.appliedOn} />}
      </Fold>
      <Fold title="Weather to reckon with">{() => <WeatherBlanks />}</Fold>
      <Fold title="Assumptions of the model">{() => <AssumptionBlanks />}</Fold>
    </>
  );
}

const counted = (title: string, list: readonly unknown[]): string =>
  list.length === 0 ? title : `${title} (${list.length})`;
