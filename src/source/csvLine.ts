const QUOTE = '"';

/**
 * Fields of one line of delimited text, blanks around them left out; a quoted field may hold separators and doubled
 * quotes. Null where a quote opens and does not close.
 * @example csvFields('"A, B",1,', ',') // ['A, B', '1', '']
 */
export function csvFields(text: string, separator: string): string[] | null {
  if (!text.includes(QUOTE)) return text.split(separator).map((field) => field.trim());
  const fields: string[] = [];
  let at = 0;
  for (;;) {
    while (text[at] === ' ') at++;
    const quoted = text[at] === QUOTE ? quotedFrom(text, at) : null;
    if (text[at] === QUOTE && quoted === null) return null;
    const next = text.indexOf(separator, quoted?.end ?? at);
    const end = next < 0 ? text.length : next;
    const rest = text.slice(quoted?.end ?? at, end).trim();
    fields.push((quoted?.content ?? '') + rest);
    if (next < 0) return fields;
    at = end + 1;
  }
}

function quotedFrom(text: string, from: number): { content: string; end: number } | null {
  let content = '';
  for (let at = from + 1; ; ) {
    const close = text.indexOf(QUOTE, at);
    if (close < 0) return null;
    content += text.slice(at, close);
    if (text[close + 1] !== QUOTE) return { content: content.trim(), end: close + 1 };
    content += QUOTE;
    at = close + 2;
  }
}
