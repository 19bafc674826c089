import { Fold } from '../shell/Fold.tsx';
import { AssumptionBlanks } from './AssumptionBlanks.tsx';
import { EvidenceBlanks } from './EvidenceBlanks.tsx';
import { FieldBlanks } from './FieldBlanks.tsx';
import { SprayBlanks } from './SprayBlanks.tsx';
import { WeatherBlanks } from './WeatherBlanks.tsx';

/** Everything a question can say beyond its sentence, in folds. */
export function MoreBlanks() {
  return (
    <>
      <Fold title="More about the field">{() => <FieldBlanks />}</Fold>
      <Fold title="More about the spraying">{() => <SprayBlanks />}</Fold>
      <Fold title="Soil tests and bioassays">{() => <EvidenceBlanks />}</Fold>
      <Fold title="Weather to reckon with">{() => <WeatherBlanks />}</Fold>
      <Fold title="Assumptions of the model">{() => <AssumptionBlanks />}</Fold>
    </>
  );
}
