import { type LadderEntry, type Rung, rungsOf } from './ladder.ts';
import { Mark } from './Mark.tsx';

interface LadderProps {
  readonly entries: readonly LadderEntry[];
  /** What is said of those that only a wider row puts there. */
  readonly fallBack: string;
}

/** Intervals from short to long, each with a bar of its length and all that share it. */
export function Ladder({ entries, fallBack }: LadderProps) {
  return (
    <>
      <p class="mark-key">
        {entries.some(({ fromMemory }) => fromMemory) && <Mark mark="from memory" />}
        {entries.some((entry) => entry.fallBack !== null) && <span>† {fallBack}</span>}
      </p>
      <ol class="ladder" data-testid="ladder">
        {rungsOf(entries).map((rung) => (
          <li key={rung.interval ?? ''} data-none={rung.interval === null ? '' : undefined}>
            <p class="rung-length">
              {rung.interval ?? 'No interval known: read your label'}
              {rung.interval !== null && <Bar share={rung.share} />}
            </p>
            <Names entries={rung.entries} />
          </li>
        ))}
      </ol>
    </>
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
  return (
    <ul class="names">
      {entries.map(({ name, href, fromMemory, bioassay, atLeast, fallBack }) => (
        <li key={name} data-fall-back={fallBack === null ? undefined : ''}>
          <a href={href}>{name}</a>
          {fallBack !== null && '\u00a0†'}
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
