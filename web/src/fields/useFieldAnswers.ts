import { useEffect, useState } from 'preact/hooks';
import type { FieldAnswer, Problem, StoredField } from '../api/contract.ts';
import { GoneError, RefusedError, requestJson } from '../api/requestJson.ts';

/** Answers by field, or why it has none; a field is absent until they have come. */
export type AnswersByField = ReadonlyMap<string, readonly FieldAnswer[] | Problem>;

/** Time before a server that is gone is asked again. [ms] */
const RETRY_MS = 3000;

/**
 * Asks for the answers of all fields, one field after the other, and again when a field or the weather has changed.
 * Where the server is gone it is asked again until it answers.
 */
export function useFieldAnswers(
  fields: readonly StoredField[],
  round: number,
): { readonly answers: AnswersByField; readonly gone: boolean } {
  const [answers, setAnswers] = useState<AnswersByField>(new Map());
  const [gone, setGone] = useState(false);
  const asked = fields
    .filter(({ record }) => record.plans.length > 0)
    .map(({ record, version }) => `${record.id} ${version}`)
    .join(',');
  useEffect(() => {
    const stop = new AbortController();
    const ids = asked.split(',').flatMap((part) => part.split(' ')[0] || []);
    void (async () => {
      while (ids.length > 0) {
        const [id] = ids;
        try {
          const got = await answersOf(id, stop.signal);
          if (stop.signal.aborted) return;
          setAnswers((before) => new Map(before).set(id, got));
          ids.shift();
          setGone(false);
        } catch (error) {
          if (stop.signal.aborted) return;
          if (!(error instanceof GoneError)) throw error;
          setGone(true);
          await new Promise((again) => setTimeout(again, RETRY_MS));
          if (stop.signal.aborted) return;
        }
      }
    })();
    return () => stop.abort();
  }, [asked, round]);
  return { answers, gone };
}

async function answersOf(id: string, signal: AbortSignal): Promise<readonly FieldAnswer[] | Problem> {
  try {
    return await requestJson<FieldAnswer[]>(`/api/fields/${id}/answers`, { signal });
  } catch (error) {
    if (error instanceof RefusedError) return error.problem;
    throw error;
  }
}
