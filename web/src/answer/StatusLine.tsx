import { useEffect, useState } from 'preact/hooks';

/** Time without a change before the short answer is spoken. [ms] */
const QUIET_MS = 700;

/** Speaks the short answer to screen readers once the question has come to rest. */
export function StatusLine({ text }: { text: string }) {
  const [spoken, setSpoken] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setSpoken(text), QUIET_MS);
    return () => clearTimeout(timer);
  }, [text]);
  return (
    <p role="status" class="unseen">
      {spoken}
    </p>
  );
}
