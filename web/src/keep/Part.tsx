import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

interface PartProps {
  readonly title: string;
  /** How much is entered, beside the title. */
  readonly count?: number;
  readonly startOpen?: boolean;
  readonly testId?: string;
  readonly children: ComponentChildren;
}

/** A part of a long form that folds; it opens by itself where something in it waits to be mended. */
export function Part({ title, count, startOpen = false, testId, children }: PartProps) {
  const [open] = useState(startOpen);
  return (
    <details class="fold part" open={open} data-testid={testId}>
      <summary>
        <h2>
          {title}
          {count !== undefined && count > 0 && <small>{count}</small>}
        </h2>
      </summary>
      <div class="fold-body">{children}</div>
    </details>
  );
}
