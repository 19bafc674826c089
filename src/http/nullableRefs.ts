/**
 * Mends how the document says "this shape, or null": the generator joins a reference and a type that allows null with
 * `allOf`, which no null can fit; `anyOf` says what is meant. Everything else stays as it is.
 */
export function nullableRefs(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(nullableRefs);
  if (typeof node !== 'object' || node === null) return node;
  const { allOf, ...others } = node as { allOf?: unknown };
  const rest = Object.fromEntries(Object.entries(others).map(([key, value]) => [key, nullableRefs(value)]));
  if (allOf === undefined) return rest;
  const [reference, addition] = allOf as readonly { $ref?: string; type?: unknown }[];
  const { type, ...notes } = addition ?? {};
  const isNullable =
    reference?.$ref !== undefined && (type === 'null' || (Array.isArray(type) && type.includes('null')));
  return isNullable
    ? { ...rest, ...notes, anyOf: [reference, { type: 'null' }] }
    : { ...rest, allOf: nullableRefs(allOf) };
}
