import { useState } from 'preact/hooks';

const PREFIX = 'drywake-text:';

/** A text that is being typed, kept over a reload under a name of its own. */
export function useKeptText(name: string): [string, (text: string) => void] {
  const [text, setText] = useState(() => kept(name));
  return [
    text,
    (next) => {
      setText(next);
      keep(name, next);
    },
  ];
}

function kept(name: string): string {
  try {
    return localStorage.getItem(PREFIX + name) ?? '';
  } catch {
    return '';
  }
}

function keep(name: string, text: string): void {
  try {
    if (text === '') localStorage.removeItem(PREFIX + name);
    else localStorage.setItem(PREFIX + name, text);
  } catch {
    // Storage is full or forbidden: the text lives as long as the page.
  }
}
