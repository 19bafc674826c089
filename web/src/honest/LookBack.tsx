import { GoneNote } from '../answer/ProblemNote.tsx';
import type { Answer, Problem } from '../api/contract.ts';
import { useWorded } from '../units/useWorded.ts';
import { LookBackFigures } from './LookBackFigures.tsx';
import { useLookBack } from './useLookBack.ts';
import '../style/honest.css';

/** Why there is nothing to look back on, as a heading; the server’s own words follow. */
const REFUSED: Readonly<Record<string, string>> = {
  CROP_MIX: 'A mix cannot be looked back on as one',
  TOO_FEW_YEARS: 'Too few years to look back on',
  NO_CARRYOVER: 'No odds to look back on',
};

/** A look back on past years, in each state that it can be in. */
export function LookBack({ answer }: { answer: Answer }) {
  const { hindcast, phase, progress, fresh, problem, gone, begin, stop } = useLookBack(
    answer.inputs.question,
  );
  return (
    <div class="look-back" data-testid="look-back-state" data-phase={phase}>
      {phase === 'asking' && (
        <div class="look-back-progress">
          <p data-testid="look-back-count">
            {progress === null
              ? 'Going through the past years; this takes some seconds.'
              : `${progress.done} of ${progress.of} past years looked back on.`}
          </p>
          {progress === null ? (
            <progress aria-label="Past years" />
          ) : (
            <progress aria-label="Past years" value={progress.done} max={progress.of} />
          )}
          <button type="button" class="small-button" data-testid="look-back-stop" onClick={stop}>
            Stop
          </button>
        </div>
      )}
      {(phase === 'waiting' || phase === 'stopped') && (
        <div class="look-back-progress">
          <p>
            {phase === 'stopped'
              ? 'Stopped.'
              : hindcast === null
                ? 'The question has changed.'
                : 'The question has changed; below is the look back on the last one.'}
          </p>
          <button type="button" class="small-button" data-testid="look-back" onClick={begin}>
            Look back on past years
          </button>
        </div>
      )}
      {gone && <GoneNote retry={begin} />}
      {problem && <Refused problem={problem} />}
      {hindcast && problem === null && <LookBackFigures hindcast={hindcast} stale={!fresh} />}
      <p class="unseen" role="status">
        {phase === 'ended' && fresh && hindcast !== null && problem === null ? hindcast.sentence : ''}
      </p>
    </div>
  );
}

function Refused({ problem }: { problem: Problem }) {
  const { code, message, hint } = useWorded()(problem);
  return (
    <div class="note" data-testid="look-back-refused" data-code={code}>
      <p class="note-title">{REFUSED[code] ?? 'Not to be looked back on'}</p>
      <p>{message}</p>
      {hint && <p>{hint}</p>}
    </div>
  );
}
