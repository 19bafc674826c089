import type { Answer } from '../api/contract.ts';
import { useForm } from './FormContext.ts';
import { SoilBlanks } from './groundBlanks.tsx';
import { IntervalBlank } from './IntervalBlank.tsx';
import { MoreBlanks } from './MoreBlanks.tsx';
import {
  AppliedOnBlank,
  CropBlank,
  OddsLimitBlank,
  PlantOnBlank,
  RateBlank,
  StationBlank,
} from './sharedBlanks.tsx';
import { ProductBlank } from './sprayBlanks.tsx';

/** The question: a sentence with blanks, then folds with all that it leaves unsaid. */
export function QuestionForm({ answer }: { answer: Answer | null }) {
  const { question } = useForm();
  return (
    <form class="question" aria-label="The question" onSubmit={(event) => event.preventDefault()}>
      <ProductBlank lead="I sprayed" dropped={{ evidence: undefined }} />
      <AppliedOnBlank lead="on" />
      <RateBlank lead="at" />
      <CropBlank lead="before" />
      <PlantOnBlank lead="planting" appliedOn={question.appliedOn} />
      <SoilBlanks lead="on" />
      <StationBlank lead="near" />
      <IntervalBlank used={answer?.inputs.mainInterval ?? null} />
      <OddsLimitBlank lead="I accept" />
      <MoreBlanks />
    </form>
  );
}
