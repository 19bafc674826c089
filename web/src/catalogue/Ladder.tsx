import { type LadderEntry, type Rung, rungsOf } from './ladder.ts';
import { Mark } from './Mark.tsx';

interface LadderProps {
  readonly entries: readonly LadderEntry[];
  /** What those without an interval are told. */
  readonly none: string;
  /** What stands over those that only a wider row puts there. */
  readonly fallBack: string;
}

/** Intervals from short to long, each with a bar of its length and all that share it. */
export function Ladder({ entries, none, fallBack }: LadderProps) {
  return (
    <ol class="ladder" data-testid="ladder">
      {rungsOf(entries).map((rung) => (
        <li key={rung.interval ?? ''} data-none={rung.interval === null ? '' : undefined}>
          <p class="rung-length">
            {rung.interval ?? none}
            {rung.interval !== null && <Bar share={rung.share} />}
          </p>
          <div>
            <Names entries={rung.named} />
            {rung.byFallBack.length > 0 && (
              <div class="rung-fall-back">
                <p class="small">{fallBack}</p>
                <Names entries={rung.byFallBack} />
              </div>
            )}
          </div>
        </li>
      ))}
    </ol>
  );
}

function Bar({ share }: Pick<Rung, 'share'>) {
  return (
    <span
      class="rung-bar"
      aria-hidden="true"
      ref={(bar) => bar?.style.setProperty('--share', `${Math.max(1, share * 100)}%`)}
    />
  );
}

function Names({ entries }: { entries: readonly LadderEntry[] }) {
  if (entries.length === 0) return null;
  return (
    <ul class="names">
      {entries.map(({ name, href, fromMemory, bioassay, atLeast }) => (
        <li key={name}>
          <a href={href}>{name}</a>
          {atLeast && <small> or more</small>}
          {bioassay && <small> with a bioassay</small>}
          {fromMemory && (
            <>
              {' '}
              <Mark mark="from memory" quiet />
            </>
          )}
        </li>
      ))}
    </ul>
  );
}
