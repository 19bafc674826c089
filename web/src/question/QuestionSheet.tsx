import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** On a small screen the question is a sheet that comes up from below; the answer stays behind it. */
export function QuestionSheet({
  summary,
  short,
  children,
}: {
  summary: string;
  short: string;
  children: ComponentChildren;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [open, setOpen] = useState(false);
  useEffect(() => {
    if (open) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open]);
  return (
    <>
      <button type="button" class="sheet-open" data-testid="open-question" onClick={() => setOpen(true)}>
        <span class="sheet-summary">{summary}</span>
        <span class="sheet-change">Change the question</span>
      </button>
      <dialog ref={dialog} class="sheet" aria-label="The question" onClose={() => setOpen(false)}>
        <div class="sheet-scroll">{children}</div>
        <div class="sheet-foot">
          <span>{short}</span>
          <button type="button" class="button" onClick={() => setOpen(false)}>
            See the answer
          </button>
        </div>
      </dialog>
    </>
  );
}
