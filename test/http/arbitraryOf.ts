import fc from '../fastCheck.ts';

/** A schema as the interface's own document gives it. */
export interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly maxItems?: number;
  readonly minItems?: number;
  readonly format?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
}

/** What no schema asks for, and people, programs and attackers send. */
export const HOSTILE: readonly unknown[] = [
  ...[null, true, 0, -0, -1, 1e308, -1e308, 1e-308, 2 ** 53, 29.5],
  ...['', ' ', '\u0000', 'NaN', '__proto__', 'constructor', '../../etc/passwd', '=1+1', '🌾'.repeat(40)],
  ...['0000-00-00', '0001-01-01', '9999-12-31', '2023-02-29', '2026-13-01', '+275760-09-13'],
  ...["'; DROP TABLE daily; --", '%00', 'a\r\nSet-Cookie: x=1', 'a'.repeat(5000), '{{7*7}}'],
  ...[[], [[]], {}, { __proto__: { polluted: true } }, { constructor: { prototype: { polluted: true } } }],
];

const MOST_ITEMS = 4;

/** Values that a schema allows, and with some luck questions that make sense: names come from `words`. */
export function arbitraryOf(
  schema: Schema,
  refs: Readonly<Record<string, Schema>>,
  words: Readonly<Record<string, readonly unknown[]>>,
  name = '',
): fc.Arbitrary<unknown> {
  const inner = (next: Schema, called = name) => arbitraryOf(next, refs, words, called);
  if (words[name]) return fc.constantFrom(...words[name]);
  if (schema.$ref) return inner(refs[schema.$ref.split('/').at(-1) ?? '']);
  if ('const' in schema) return fc.constant(schema.const);
  if (schema.enum) return fc.constantFrom(...schema.enum);
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices) return fc.oneof(...choices.map((one) => inner(one)));
  if (schema.allOf) return inner(schema.allOf[0]);
  switch (Array.isArray(schema.type) ? schema.type[0] : schema.type) {
    case 'object': {
      const { properties = {}, required = [] } = schema;
      const members = Object.fromEntries(
        Object.entries(properties).map(([key, one]) => [key, inner(one, key)]),
      );
      return fc.record(members, { requiredKeys: [...required] });
    }
    case 'array':
      return fc.array(inner(schema.items ?? {}), {
        minLength: schema.minItems ?? 0,
        maxLength: Math.min(schema.maxItems ?? MOST_ITEMS, MOST_ITEMS),
      });
    case 'string':
      return stringOf(schema);
    case 'integer': {
      const [min, max] = endsOf(schema);
      const usual = fc.integer({ min: Math.ceil(min), max: Math.floor(max) });
      const most = schema.maximum ?? schema.exclusiveMaximum ?? Number.MAX_SAFE_INTEGER;
      return fc.oneof({ weight: 9, arbitrary: usual }, { weight: 1, arbitrary: fc.constant(most) });
    }
    case 'number': {
      const [min, max] = endsOf(schema);
      return fc.double({ min, max, noNaN: true });
    }
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    default:
      return fc.constantFrom(...HOSTILE);
  }
}

const stringOf = ({ format, minLength = 0, maxLength = 40 }: Schema): fc.Arbitrary<string> =>
  format === 'date'
    ? fc
        .date({ min: new Date('1960-01-01'), max: new Date('2031-12-31'), noInvalidDate: true })
        .map((date) => date.toISOString().slice(0, 10))
    : fc.string({ minLength, maxLength: Math.min(maxLength, 40), unit: 'grapheme' });

function endsOf({ minimum, maximum, exclusiveMinimum, exclusiveMaximum }: Schema): [number, number] {
  const least = minimum ?? exclusiveMinimum ?? -1000;
  return [least, maximum ?? exclusiveMaximum ?? least + 100_000];
}
