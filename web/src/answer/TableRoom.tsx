import type { ComponentChildren } from 'preact';

/** Room for a table that may be wider than the screen: it scrolls by itself, and by keyboard. */
export function TableRoom({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="table-scroll" tabIndex={0} aria-label={`Table: ${label}`}>
      {children}
    </section>
  );
}
