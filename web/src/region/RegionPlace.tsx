import { useMemo } from 'preact/hooks';
import type { Start } from '../api/useStart.ts';
import { missingWords } from '../question/defaults.ts';
import { QuestionDesk } from '../shell/QuestionDesk.tsx';
import type { Held } from '../shell/useHeldAddress.ts';
import { useLook } from '../shell/useLook.ts';
import { useTitle } from '../shell/useTitle.ts';
import { useDates } from '../units/useDates.ts';
import { RegionAnswer } from './RegionAnswer.tsx';
import { RegionForm } from './RegionForm.tsx';
import { type RegionAsked, regionOf } from './regionAddress.ts';
import { regionFinding, regionInWords } from './regionWords.ts';
import { useRegion } from './useRegion.ts';

interface RegionPlaceProps {
  readonly start: Start;
  readonly held: Held<RegionAsked>;
  readonly asked: RegionAsked;
}

const NEEDED = ['appliedOn', 'residual', 'crop', 'plantOn'] as const;
/** Stations up to which the answer comes without being asked for; more of them keep the machine busy for a while. */
const AT_ONCE = 150;

/** One treatment, crop and date at every station. */
export function RegionPlace({ start, held, asked }: RegionPlaceProps) {
  const { units, visit, problem: unread } = held;
  const { question } = asked;
  const missing = missingWords({ ...question, labelEntry: undefined }, NEEDED);
  const count = start.choices.stations.length;
  const run = useRegion(missing.length === 0 ? regionOf(asked) : null, count <= AT_ONCE);
  const dates = useDates();
  const { look, change } = useLook(held, asked, 'replace');
  useTitle(`${question.residual ?? 'A residual'} before ${question.crop ?? 'the next crop'}, by station`);
  const { answer, phase, fresh } = run;
  const ended = phase === 'ended' || phase === 'stopped';
  const finding = useMemo(
    () => (answer === null ? null : regionFinding(answer, phase === 'ended', dates)),
    [answer, phase, dates],
  );
  return (
    <QuestionDesk
      start={start}
      question={question}
      units={units}
      change={change}
      form={<RegionForm asked={asked} where={(part) => look(part, 'push')} />}
      visit={visit}
      summary={`${question.residual} before ${question.crop}, by station`}
      short={finding !== null && ended && fresh ? finding.head : ''}
      inWords={() => regionInWords(asked, dates)}
      unread={unread}
      missing={missing}
      about={<p class="field-line">{sayWhere(asked, count)}</p>}
      asked={{
        answer: run,
        pending: phase === 'asking',
        problem: run.problem,
        gone: run.gone,
        retry: run.begin,
      }}
    >
      {(stale) =>
        missing.length > 0 && run.answer === null ? null : (
          <RegionAnswer
            run={run}
            finding={finding}
            asked={asked}
            units={units}
            stale={fresh ? null : (stale ?? 'Answer to the last question')}
            count={count}
            look={look}
          />
        )
      }
    </QuestionDesk>
  );
}

function sayWhere({ states, box }: RegionAsked, count: number): string {
  if (states !== null) return `All stations in ${states.join(', ')}`;
  if (box !== null) return 'All stations in a box';
  return count === 1 ? 'The one station that is here' : `All ${count.toLocaleString('en-US')} stations`;
}
