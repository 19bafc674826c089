/** Longest id that a record may have. */
const MOST = 60;

/** An id that people can read, made from a name and unlike those that are taken: "home-quarter", "home-quarter-2". */
export function freeId(name: string, taken: readonly string[]): string {
  const stem =
    name
      .normalize('NFKD')
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-+|-+$/g, '')
      .slice(0, MOST - 4)
      .replace(/-+$/, '') || 'one';
  let id = stem;
  for (let number = 2; taken.includes(id); number++) id = `${stem}-${number}`;
  return id;
}
