import type { ComponentChildren } from 'preact';
import { useId, useRef } from 'preact/hooks';
import { useUnits } from '../units/useUnits.ts';
import { type TermName, termsIn } from './terms.ts';

/** A term that explains itself when tapped. */
export function Term({ name, children }: { name: TermName; children?: ComponentChildren }) {
  const units = useUnits();
  const id = `term-${useId()}`;
  const button = useRef<HTMLButtonElement>(null);
  const note = useRef<HTMLSpanElement>(null);

  function place(event: Event): void {
    if ((event as ToggleEvent).newState !== 'open' || !button.current || !note.current) return;
    const shown = note.current;
    window.addEventListener('scroll', () => shown.hidePopover(), { once: true, passive: true });
    const { left, bottom, top } = button.current.getBoundingClientRect();
    const { style } = note.current;
    const width = Math.min(320, window.innerWidth - 32);
    const below = bottom + 8;
    style.left = `${Math.max(16, Math.min(left, window.innerWidth - width - 16))}px`;
    style.top = below + 160 < window.innerHeight ? `${below}px` : 'auto';
    style.bottom = below + 160 < window.innerHeight ? 'auto' : `${window.innerHeight - top + 8}px`;
  }

  return (
    <>
      <button ref={button} type="button" class="term" popovertarget={id}>
        {children ?? name}
      </button>
      <span ref={note} id={id} class="term-note" popover="auto" role="note" onBeforeToggle={place}>
        <strong>{name}</strong> {termsIn(units)[name]}
      </span>
    </>
  );
}
