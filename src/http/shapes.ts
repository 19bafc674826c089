/** A shape of an OpenAPI document, as far as the reference page and the data dictionary show it. */
export interface Shape {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly unit?: string;
  readonly default?: unknown;
  readonly $ref?: string;
  readonly properties?: Record<string, Shape>;
  readonly required?: readonly string[];
  readonly items?: Shape;
  readonly anyOf?: readonly Shape[];
}

/** The type of a field in words: "text or null", "list of Year". */
export function typeWords(shape: Shape): string {
  if (shape.$ref) return shape.$ref.split('/').at(-1) ?? '';
  if (shape.enum) return shape.enum.map(String).join(' | ');
  if (shape.anyOf) return shape.anyOf.map(typeWords).join(' or ');
  if (shape.items) return `list of ${typeWords(shape.items)}`;
  return [shape.type ?? 'any'].flat().join(' or ');
}
