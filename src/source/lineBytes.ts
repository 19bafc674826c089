const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/** Where the line that begins at `at` hands over to the next one, or the end of the bytes. */
export function nextLineAt(bytes: Uint8Array, at: number): number {
  let i = at;
  while (i < bytes.length && bytes[i] !== LINE_FEED) i++;
  return Math.min(i + 1, bytes.length);
}

/** End of a line's text: its line end, LF or CRLF, left out. */
export function textEnd(bytes: Uint8Array, at: number, next: number): number {
  let end = next;
  if (end > at && bytes[end - 1] === LINE_FEED) end--;
  if (end > at && bytes[end - 1] === CARRIAGE_RETURN) end--;
  return end;
}

/** Whether `prefix` stands in the bytes from `at` up to `end`; allocates nothing and calls nothing. */
export function beginsWith(bytes: Uint8Array, at: number, end: number, prefix: Uint8Array): boolean {
  if (end - at < prefix.length) return false;
  for (let i = 0; i < prefix.length; i++) if (bytes[at + i] !== prefix[i]) return false;
  return true;
}
