import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

/** A fold with its own summary line; what it holds is made when it is first opened. */
export function Fold({ title, children }: { title: string; children: () => ComponentChildren }) {
  const [opened, setOpened] = useState(false);
  return (
    <details class="fold" onToggle={({ currentTarget }) => setOpened(opened || currentTarget.open)}>
      <summary>{title}</summary>
      {opened && <div class="fold-body">{children()}</div>}
    </details>
  );
}
