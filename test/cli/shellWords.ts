/**
 * The words of a simple command line as a shell would split it: blanks between them, quotes around what holds blanks,
 * lines that go on behind a backslash; a comment and what stands behind ">" are left out.
 */
export function shellWords(line: string): string[] {
  const words: string[] = [];
  for (const [, quoted, plain] of line.replaceAll('\\\n', ' ').matchAll(/"([^"]*)"|([^\s"]+)/g)) {
    if (plain === '>' || plain?.startsWith('#')) break;
    words.push(quoted ?? plain);
  }
  return words;
}
