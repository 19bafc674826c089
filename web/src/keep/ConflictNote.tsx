import { useDates } from '../units/useDates.ts';
import { useUnits } from '../units/useUnits.ts';
import { differences } from './differences.ts';
import type { OpenRecord } from './useRecord.ts';

interface ConflictNoteProps<T extends { readonly id: string }> {
  readonly open: OpenRecord<T>;
  /** What the record is called, such as "field". */
  readonly noun: string;
  readonly names: Readonly<Record<string, string>>;
}

/** Two windows have changed the same record: both stand here, and nothing is overwritten before the user chooses. */
export function ConflictNote<T extends { readonly id: string }>({ open, noun, names }: ConflictNoteProps<T>) {
  const { desk, theirs, record } = open;
  const units = useUnits();
  const dates = useDates();
  if (theirs === null || record === null) return null;
  const rows = theirs.removed ? [] : differences(record, theirs.record, names, { units, dates });
  return (
    <section class="note conflict" data-testid="conflict" aria-labelledby="conflict-title">
      <h2 id="conflict-title">
        {theirs.removed
          ? `This ${noun} was removed in another window while you changed it here.`
          : `This ${noun} was changed in another window while you changed it here.`}
      </h2>
      <p>
        Nothing is overwritten until you choose. “Keep mine” makes a new version, and undo brings theirs back;
        “{takeWords(theirs.removed)}” lets the changes of this page go.
      </p>
      {rows.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reached by keyboard
        <section class="table-scroll" tabIndex={0} aria-label="The two versions">
          <table>
            <thead>
              <tr>
                <th scope="col">Part</th>
                <th scope="col">Here</th>
                <th scope="col">In the other window, version {theirs.version}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ part, mine, theirs: other }) => (
                <tr key={part}>
                  <th scope="row">{part}</th>
                  <td>{mine}</td>
                  <td>{other}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <div class="do-row">
        <button type="button" class="button" data-testid="keep-mine" onClick={() => void desk.keepMine()}>
          Keep mine
        </button>
        <button
          type="button"
          class="small-button"
          data-testid="take-theirs"
          onClick={() => desk.takeTheirs()}
        >
          {takeWords(theirs.removed)}
        </button>
      </div>
    </section>
  );
}

const takeWords = (removed: boolean): string => (removed ? 'Leave it removed' : 'Take theirs');
