import { useState } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type {
  Answer,
  FieldAnswer,
  FieldRecord,
  Problem,
  QuestionInput,
  StoredField,
} from '../api/contract.ts';
import { RefusedError, requestJson } from '../api/requestJson.ts';
import { useFetched } from '../api/useFetched.ts';
import { HandoutDesk } from '../handout/HandoutDesk.tsx';
import { confirmed } from '../handout/HandoutPlace.tsx';
import type { OpenInterval } from '../handout/openIntervals.ts';
import { putRecord } from '../keep/shelf.ts';
import { useTitle } from '../shell/useTitle.ts';
import type { Units } from '../units/units.ts';
import { fieldAddress } from './fieldsAddress.ts';

interface FieldSheetPageProps {
  readonly field: string;
  readonly plan: string;
  readonly units: Units;
}

/** The sheet of one planned crop of a kept field; an interval that is confirmed here is kept with the field. */
export function FieldSheetPage({ field, plan, units }: FieldSheetPageProps) {
  const path = `/api/fields/${encodeURIComponent(field)}`;
  const kept = useFetched<StoredField>(path);
  const { data: stored } = kept;
  // The version in the address asks anew after every change; the server takes no notice of it.
  const answers = useFetched<FieldAnswer[]>(stored && `${path}/answers#${stored.version}`);
  const [refused, setRefused] = useState<Problem | null>(null);
  useTitle(`Sheet for ${stored?.record.name ?? 'a field'}`);
  const answer = answers.data?.find(({ planId }) => planId === plan);
  const question = (answer?.question ?? null) as QuestionInput | null;

  async function confirm({ other }: OpenInterval, interval: string): Promise<void> {
    if (stored === null || question === null) return;
    try {
      // An interval that cannot be read is refused before it is kept.
      await requestJson<Answer>('/api/odds', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(confirmed(question, other, interval)),
      });
      const asked = other === null ? question : question.otherTreatments?.[other];
      await putRecord(
        '/api/fields',
        withInterval(stored.record, asked, { crop: question.crop, interval }),
        stored.version,
      );
      setRefused(null);
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      setRefused(error.problem);
    }
    kept.reload();
  }

  if (stored !== null && question !== null) {
    return (
      <>
        {refused && <ProblemNote problem={refused} />}
        <HandoutDesk
          question={question}
          units={units}
          field={stored.record}
          back={fieldAddress(field)}
          confirm={(open, interval) => void confirm(open, interval)}
        />
      </>
    );
  }
  const problem = kept.problem ?? answers.problem ?? answer?.problem ?? null;
  return (
    <main class="lone fields-place">
      <p class="back">
        <a href={fieldAddress(field)}>Back to the field</a>
      </p>
      {(kept.gone || answers.gone) && <GoneNote retry={kept.reload} />}
      {problem ? (
        <ProblemNote problem={problem} />
      ) : answers.data !== null && answer === undefined ? (
        <p class="note">This field has no such planned crop any more.</p>
      ) : (
        <p>Reading the field…</p>
      )}
    </main>
  );
}

type Asked = Pick<FieldRecord['treatments'][number], 'appliedOn' | 'residual' | 'labelEntry'>;

/** The field with an interval kept at the treatment that was asked about. */
function withInterval(
  record: FieldRecord,
  asked: Partial<Asked> | undefined,
  own: { readonly crop: string; readonly interval: string },
): FieldRecord {
  return {
    ...record,
    treatments: record.treatments.map((one) =>
      one.appliedOn === asked?.appliedOn &&
      one.residual === asked.residual &&
      one.labelEntry === asked.labelEntry
        ? { ...one, intervals: [...one.intervals.filter(({ crop }) => crop !== own.crop), own] }
        : one,
    ),
  };
}
