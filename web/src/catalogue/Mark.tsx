import type { Figure } from '../api/contract.ts';

type MarkName = Figure['mark'];

/** How a figure came here, by shape and by word: a full disc, a diamond, an open broken ring. */
export function Mark({ mark, quiet = false }: { mark: MarkName; quiet?: boolean }) {
  return (
    <span class="mark" data-mark={mark}>
      <MarkShape mark={mark} />
      <span class={quiet ? 'unseen' : undefined}>{mark}</span>
    </span>
  );
}

function MarkShape({ mark }: { mark: MarkName }) {
  return (
    <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      {mark === 'seen' && <circle cx="6" cy="6" r="4.500" fill="currentColor" />}
      {mark === 'computed' && (
        <path
          d="M6 1.200L10.800 6 6 10.800 1.200 6z"
          fill="none"
          stroke="currentColor"
          stroke-width="1.700"
        />
      )}
      {mark === 'from memory' && (
        <circle
          cx="6"
          cy="6"
          r="4.300"
          fill="none"
          stroke="currentColor"
          stroke-width="1.700"
          stroke-dasharray="2.700 1.800"
        />
      )}
    </svg>
  );
}

/** What the three marks mean. */
export function MarkKey() {
  return (
    <p class="mark-key">
      <span>
        <Mark mark="seen" /> read in its source
      </span>
      <span>
        <Mark mark="computed" /> worked out from figures of the sources
      </span>
      <span>
        <Mark mark="from memory" /> recalled, still to be checked
      </span>
    </p>
  );
}
