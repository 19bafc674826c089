import type { Batch } from '../../api/contract.ts';
import { useWorded } from '../../units/useWorded.ts';

/** Longer hints, such as a list of all names, stand in the files alone. [characters] */
const LONGEST_HINT = 160;
/** Rows told of; the files name all. */
const SHOWN = 20;

/** Rows of a list that could not be answered, each with its line and the reason. */
export function RefusedRows({ rows }: { rows: Batch['rows'] }) {
  const worded = useWorded();
  const refused = rows.flatMap(({ line, given, problem }) =>
    problem ? [{ line, given, problem: worded(problem) }] : [],
  );
  if (refused.length === 0) return null;
  return (
    <div class="note">
      <p class="note-title">Not answered</p>
      <ul data-testid="list-refused">
        {refused.slice(0, SHOWN).map(({ line, given, problem }) => (
          <li key={line}>
            Line {line}
            {given.field ? ` (${given.field})` : ''}: {problem.message}{' '}
            {problem.hint.length <= LONGEST_HINT && problem.hint}
          </li>
        ))}
      </ul>
      {refused.length > SHOWN && (
        <p>And {(refused.length - SHOWN).toLocaleString('en-US')} more, named in the files.</p>
      )}
    </div>
  );
}
