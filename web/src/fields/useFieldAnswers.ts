import { useEffect, useState } from 'preact/hooks';
import type { FieldAnswer, StoredField } from '../api/contract.ts';
import { requestJson } from '../api/requestJson.ts';

/** Answers by field; a field is absent until its answers have come. */
export type AnswersByField = ReadonlyMap<string, readonly FieldAnswer[]>;

/** Asks for the answers of all fields, one field after the other, and again when a field or the weather has changed. */
export function useFieldAnswers(fields: readonly StoredField[], round: number): AnswersByField {
  const [answers, setAnswers] = useState<AnswersByField>(new Map());
  const asked = fields
    .filter(({ record }) => record.plans.length > 0)
    .map(({ record, version }) => `${record.id} ${version}`)
    .join(',');
  useEffect(() => {
    const stop = new AbortController();
    const ids = asked.split(',').flatMap((part) => part.split(' ')[0] || []);
    void (async () => {
      for (const id of ids) {
        const got = await requestJson<FieldAnswer[]>(`/api/fields/${id}/answers`, {
          signal: stop.signal,
        }).catch(() => null);
        if (stop.signal.aborted) return;
        if (got !== null) setAnswers((before) => new Map(before).set(id, got));
      }
    })();
    return () => stop.abort();
  }, [asked, round]);
  return answers;
}
