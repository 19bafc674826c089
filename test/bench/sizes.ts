import { type ParseArgsConfig, parseArgs } from 'node:util';

/** What a bench is told by its flags: as figures are measured, and for a quick look that only shows that it works. */
type Sizes<Name extends string> = Readonly<
  Record<Name, { readonly full: number | string; readonly small?: number }>
>;

/**
 * What a bench is asked for: `--small` takes the small sizes, and one given by its own flag wins over both.
 * @throws TypeError for a flag that the bench does not have
 */
export function sizesOf<Name extends string>(
  argv: readonly string[],
  sizes: Sizes<Name>,
): Record<Name, string> {
  const names = Object.keys(sizes) as Name[];
  const options: NonNullable<ParseArgsConfig['options']> = { small: { type: 'boolean' } };
  for (const name of names) options[name] = { type: 'string' };
  const { values } = parseArgs({ args: [...argv], options });
  const sizeOf = (name: Name) =>
    String(values[name] ?? (values.small ? sizes[name].small : undefined) ?? sizes[name].full);
  return Object.fromEntries(names.map((name) => [name, sizeOf(name)])) as Record<Name, string>;
}
