/** Names told in a sentence; of more the rest is counted. */
const NAMED = 5;

/** Those that a sentence before has counted, by name: "They are pea, corn and 2 more." */
export function theyAre(names: readonly string[]): string {
  if (names.length === 1) return `It is ${names[0]}.`;
  const counted = names.length - NAMED;
  const named = counted > 1 ? [...names.slice(0, NAMED), `${counted} more`] : names;
  return `They are ${named.slice(0, -1).join(', ')} and ${named[named.length - 1]}.`;
}
