import type { Unjudged } from '../api/contract.ts';
import { groupUnjudged } from './groupUnjudged.ts';

/** What could not be judged, and why; in a broken frame, since nothing is known of it. */
export function NotJudged({ all, title }: { all: readonly Unjudged[]; title: string }) {
  if (all.length === 0) return null;
  return (
    <section class="not-judged" aria-labelledby="not-judged-title" data-testid="not-judged">
      <h2 id="not-judged-title">{title}</h2>
      <dl>
        {groupUnjudged(all).map(({ reason, names }) => (
          <div key={reason}>
            <dt>{names.join(', ')}</dt>
            <dd>{reason}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
