import { useEffect, useMemo } from 'preact/hooks';
import type { QuestionInput } from '../api/contract.ts';
import { decodeAddress, encodeAddress } from '../question/address.ts';
import { go, keepField, useLocation } from '../shell/places.ts';
import { useTitle } from '../shell/useTitle.ts';
import { useUnits } from '../units/useUnits.ts';
import { HandoutDesk } from './HandoutDesk.tsx';

/** The sheet for the grower and the file: one page to print, once every interval is confirmed from a label. */
export function HandoutPlace() {
  const { search } = useLocation();
  const units = useUnits();
  const { question } = useMemo(() => decodeAddress(search), [search]);
  useTitle('Sheet for the grower');
  // The field’s own link leads back to the question of this sheet.
  useEffect(() => {
    if (question !== null) keepField(search);
  }, [question, search]);

  if (question === null) {
    return (
      <main class="lone">
        <h1 class="place-title">A sheet needs a question</h1>
        <p>
          Ask it <a href="/">on the field’s page</a>; the sheet is at the end of its answer.
        </p>
      </main>
    );
  }
  return (
    <HandoutDesk
      question={question}
      units={units}
      field={null}
      back={`/${search}`}
      confirm={({ other }, interval) =>
        go(`/sheet${encodeAddress(confirmed(question, other, interval), units)}`, 'replace')
      }
    />
  );
}

/** The question with an interval of one of its treatments read from the label. */
export const confirmed = (question: QuestionInput, other: number | null, interval: string): QuestionInput =>
  other === null
    ? { ...question, interval }
    : {
        ...question,
        otherTreatments: question.otherTreatments?.map((one, index) =>
          index === other ? { ...one, interval } : one,
        ),
      };
