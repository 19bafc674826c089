import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { KeptLabel, LabelList } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { FilesPanel } from '../keep/FilesPanel.tsx';
import { JustRemoved } from '../keep/JustRemoved.tsx';
import { RemovedList } from '../keep/RemovedList.tsx';
import { Fold } from '../shell/Fold.tsx';
import { useQuestionLink } from '../shell/useQuestionLink.ts';
import type { Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { labelAddress } from './labelAddress.ts';
import { NewLabel } from './NewLabel.tsx';

/** All products of the shed, as their labels have them. */
export function LabelListPage({ units }: { units: Units }) {
  const dates = useDates();
  const list = useFetched<LabelList>('/api/labels');
  const ask = useQuestionLink(units);
  const labels = list.data?.labels ?? [];
  const removed = list.data?.removed ?? [];
  useEffect(() => {
    document.title = 'Your labels · Drywake';
  }, []);
  return (
    <main class="lone fields-place">
      <p class="back">
        <a href="/fields">All fields</a>
      </p>
      <h1 class="place-title">Your labels</h1>
      <p class="lede" data-testid="label-count">
        {list.data ? saySome(labels) : 'Reading the labels…'}
      </p>
      {list.gone && <GoneNote retry={list.reload} />}
      {list.problem && <ProblemNote problem={list.problem} />}
      {list.data && (
        <JustRemoved shelf="/api/labels" noun="label entry" removed={removed} back={list.reload} />
      )}
      {labels.length > 0 && (
        <ul class="label-list">
          {labels.map(({ entry }) => (
            <li key={entry.id} data-testid="label-row">
              <h2>
                <a href={labelAddress(entry.id)}>{entry.name}</a>
              </h2>
              <p>{entry.actives.map(({ name }) => name).join(' + ')}</p>
              <p class="faint">
                {entry.intervals.length === 1 ? 'One crop' : `${entry.intervals.length} crops`}
                {entry.labelVersion !== '' && `, label ${entry.labelVersion}`}, entered{' '}
                {dates.full(entry.enteredOn)}
              </p>
              <p>
                <a
                  data-testid="ask-with-label"
                  href={ask({
                    labelEntry: entry.id,
                    residual: entry.actives[0].name,
                    crop: entry.intervals[0].crop,
                    interval: undefined,
                    halfLifeDays: undefined,
                  })}
                >
                  Ask with this label
                </a>
              </p>
            </li>
          ))}
        </ul>
      )}
      {list.data && (
        <>
          <NewLabel taken={[...labels.map(({ entry }) => entry.id), ...removed.map(({ id }) => id)]} />
          <div class="folds">
            <Fold title="Labels as a table: out and in">
              {() => (
                <FilesPanel
                  path="/api/labels.csv"
                  noun="label entry"
                  nouns="label entries"
                  units={units}
                  imported={list.reload}
                />
              )}
            </Fold>
            {removed.length > 0 && (
              <Fold title={`Removed label entries (${removed.length})`}>
                {() => <RemovedList shelf="/api/labels" removed={removed} back={list.reload} />}
              </Fold>
            )}
          </div>
        </>
      )}
    </main>
  );
}

function saySome(labels: readonly KeptLabel[]): string {
  if (labels.length === 0) {
    return 'None is entered yet. What you read off the label of a product in your shed wins over the catalogue, in every answer that names it.';
  }
  return labels.length === 1
    ? 'One product, as its label has it. It wins over the catalogue; the label itself is the law.'
    : `${labels.length} products, as their labels have them. They win over the catalogue; the labels themselves are the law.`;
}
