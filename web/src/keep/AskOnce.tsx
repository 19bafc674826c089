import { useLayoutEffect, useRef, useState } from 'preact/hooks';

interface AskOnceProps {
  /** What the button says, such as "Remove this field". */
  readonly text: string;
  readonly question: string;
  /** What the second button says. */
  readonly yes: string;
  readonly testId?: string;
  readonly act: () => void;
}

/** A button that asks once, in its own place, before it acts. */
export function AskOnce({ text, question, yes, testId, act }: AskOnceProps) {
  const [asking, setAsking] = useState(false);
  const first = useRef<HTMLButtonElement>(null);
  const no = useRef<HTMLButtonElement>(null);
  const asked = useRef(false);
  // Before the next key: Escape must find the focus inside.
  useLayoutEffect(() => {
    if (asking) no.current?.focus();
    else if (asked.current) first.current?.focus();
    asked.current = asking;
  }, [asking]);
  if (!asking) {
    return (
      <button ref={first} type="button" class="quiet" data-testid={testId} onClick={() => setAsking(true)}>
        {text}
      </button>
    );
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape is a shortcut for the second button
    <span class="ask-once" onKeyDown={({ key }) => key === 'Escape' && setAsking(false)}>
      <span>{question}</span>
      <button
        type="button"
        class="small-button"
        data-testid={testId && `${testId}-yes`}
        onClick={() => {
          setAsking(false);
          act();
        }}
      >
        {yes}
      </button>
      <button ref={no} type="button" class="quiet" onClick={() => setAsking(false)}>
        No, keep it
      </button>
    </span>
  );
}
