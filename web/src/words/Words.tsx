import { useUnits } from '../units/useUnits.ts';
import { termsIn } from './terms.ts';

/** All own terms in one place. */
export function Words() {
  return (
    <details class="fold">
      <summary>Words of this page</summary>
      <dl class="fold-body words">
        {Object.entries(termsIn(useUnits())).map(([name, meaning]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
