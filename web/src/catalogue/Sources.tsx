import type { ActiveView } from '../api/contract.ts';

/** Links to sources by id, as they stand at the foot of the page. */
export function SourceLinks({ ids }: { ids: readonly string[] }) {
  return (
    <span class="source-links">
      {ids.map((id) => (
        <a key={id} href={`#source-${id}`}>
          {id}
        </a>
      ))}
    </span>
  );
}

/** Titles of all sources cited above, and how much of each was read. */
export function SourceList({ sources }: { sources: ActiveView['sources'] }) {
  if (sources.length === 0) return null;
  return (
    <section class="source-list" aria-labelledby="source-title">
      <h2 id="source-title">Sources</h2>
      <ul>
        {sources.map(({ id, reference, seen }) => (
          <li key={id} id={`source-${id}`} tabIndex={-1}>
            <b>{id}</b>
            <span>
              {reference}. <small>Read: {seen}.</small>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
