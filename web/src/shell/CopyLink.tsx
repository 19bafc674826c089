import { useState } from 'preact/hooks';

/** Copies the address, which holds the whole question. */
export function CopyLink() {
  const [copied, setCopied] = useState<string | null>(null);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(location.href);
      setCopied('Link copied');
    } catch {
      setCopied('Copy the address of the page');
    }
  };
  return (
    <button type="button" class="quiet" onClick={copy}>
      <span aria-live="polite">{copied ?? 'Copy the link'}</span>
    </button>
  );
}
