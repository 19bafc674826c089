import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import { Skeleton } from '../answer/Skeleton.tsx';
import { StatusLine } from '../answer/StatusLine.tsx';
import { isUnanswerable, Unanswerable } from '../answer/Unanswerable.tsx';
import type { LabelList, Problem, QuestionInput } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import type { Start } from '../api/useStart.ts';
import { keepDrafts, keptDrafts } from '../question/drafts.ts';
import { FormContext, type FormState, refusedField } from '../question/FormContext.ts';
import { QuestionSheet } from '../question/QuestionSheet.tsx';
import type { Units } from '../units/units.ts';
import { useWorded } from '../units/useWorded.ts';
import { FieldLine } from './FieldLine.tsx';
import { useMedia } from './useMedia.ts';

const NO_LABELS: LabelList['labels'] = [];

interface QuestionDeskProps {
  readonly start: Start;
  readonly question: QuestionInput;
  readonly units: Units;
  readonly change: (part: Partial<QuestionInput>) => void;
  /** The blanks; made anew with every visit of the address. */
  readonly form: ComponentChildren;
  readonly visit: number;
  /** The question in a few words, for the button of small screens. */
  readonly summary: string;
  /** The answer in a few words, spoken when the question has come to rest; empty before there is one. */
  readonly short: string;
  /** The whole question in words, for print; asked for where nothing is missing. */
  readonly inWords: () => string;
  /** What the link holds that cannot be used. */
  readonly unread: string | null;
  /** Blanks without which nothing can be asked, in words. */
  readonly missing: readonly string[];
  readonly asked: {
    readonly answer: object | null;
    readonly pending: boolean;
    readonly problem: Problem | null;
    readonly gone: boolean;
    readonly retry: () => void;
  };
  /** Fields whose blanks are always in sight on a desk, so that a refusal is read beside them; none where absent. */
  readonly inSight?: ReadonlySet<string>;
  /** Whose ground this is about, in place of the field’s own line. */
  readonly about?: ComponentChildren;
  /** What stands under the answer, and under a refusal while an earlier answer is there. */
  readonly below?: ComponentChildren;
  /** The answer; `stale` says why it is not that of the present question. */
  readonly children: (stale: string | null) => ComponentChildren;
}

/** A question in the margin and its answer on the page, in every state that the two can be in. */
export function QuestionDesk(props: QuestionDeskProps) {
  const { start, question, units, change, form, visit, summary, short, inWords, unread, missing } = props;
  const { answer, pending, gone, retry } = props.asked;
  const worded = useWorded();
  const problem = props.asked.problem && worded(props.asked.problem);
  const { choices, example } = start;
  const desk = useMedia('(min-width: 62rem)');
  const address = () => `${location.pathname}${location.search}`;
  const [typed, setTyped] = useState<Record<string, string>>(() => keptDrafts(address()));
  useEffect(() => keepDrafts(address(), typed), [typed, question]);
  const labels = useFetched<LabelList>('/api/labels').data?.labels ?? NO_LABELS;
  const keepTyped = useCallback(
    (field: string, text: string | null) =>
      setTyped(({ [field]: _, ...rest }) => (text === null ? rest : { ...rest, [field]: text })),
    [],
  );
  const forgetTyped = useCallback(
    (prefix: string) =>
      setTyped((all) =>
        Object.fromEntries(Object.entries(all).filter(([field]) => !field.startsWith(prefix))),
      ),
    [],
  );
  const state: FormState = useMemo(
    () => ({ question, choices, labels, units, change, refusal: problem, typed, keepTyped, forgetTyped }),
    [question, choices, labels, units, change, problem, typed, keepTyped, forgetTyped],
  );
  const besideBlank = desk && (props.inSight?.has(refusedField(problem) ?? '') ?? false);
  const blanks = <div key={visit}>{form}</div>;
  const hasTyped = Object.keys(typed).length > 0;
  const stale = staleWords({ pending, gone, other: problem !== null || hasTyped || missing.length > 0 });
  return (
    <FormContext.Provider value={state}>
      <div class="desk">
        <aside class="margin">
          {desk ? (
            <>
              <h2 class="margin-title">The question</h2>
              {blanks}
            </>
          ) : (
            <QuestionSheet summary={summary} short={short}>
              {blanks}
            </QuestionSheet>
          )}
        </aside>
        <main class="page">
          {props.about ?? (
            <FieldLine
              question={question}
              example={example}
              station={choices.stations.find(({ id }) => id === question.station)}
            />
          )}
          {unread && <p class="note">{unread}</p>}
          {gone && <GoneNote retry={retry} />}
          {missing.length > 0 && (
            <p class="note">The question is not complete: fill in {missing.join(', ')}.</p>
          )}
          {problem && !besideBlank && !isUnanswerable(problem) && <ProblemNote problem={problem} />}
          {isUnanswerable(problem) ? (
            <Unanswerable problem={problem} />
          ) : answer ? (
            props.children(stale)
          ) : (
            !problem && missing.length === 0 && !gone && <Skeleton />
          )}
          {props.below}
          {missing.length === 0 && <p class="print-question">{inWords()}</p>}
          <p class="print-address">{location.href}</p>
        </main>
      </div>
      <StatusLine text={problem ? problem.message : pending ? '' : short} />
    </FormContext.Provider>
  );
}

function staleWords(why: { pending: boolean; gone: boolean; other: boolean }): string | null {
  if (why.other) return 'Answer to the last complete question';
  if (why.gone) return 'The last answer that came';
  return why.pending ? 'The last answer, a new one is on its way' : null;
}
