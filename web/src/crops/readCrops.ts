import type { Reading } from '../question/parseDate.ts';

/** Reads a list of crops by name or by another of their names; names the first that the catalogue lacks. */
export function readCrops(
  text: string,
  known: readonly { readonly name: string; readonly aliases: readonly string[] }[],
): Reading<readonly string[] | null> {
  const written = text
    .split(',')
    .map((name) => name.trim())
    .filter(Boolean);
  const found = written.map((name) =>
    known.find((crop) =>
      [crop.name, ...crop.aliases].some((one) => one.toLowerCase() === name.toLowerCase()),
    ),
  );
  const lacking = written[found.indexOf(undefined)];
  if (lacking !== undefined) {
    return { problem: `The catalogue has no crop called “${lacking}”. Write its names with commas between.` };
  }
  const names = [...new Set(found.flatMap((crop) => crop?.name ?? []))];
  return { value: names.length === 0 ? null : names };
}
