import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { DARK_TOKENS, LIGHT_TOKENS } from '../../src/chart/theme.ts';
import { ASSUMPTIONS } from '../../src/schema/assumptionList.ts';
import { assumptionsSchema } from '../../src/schema/assumptions.ts';
import { questionSchema } from '../../src/schema/question.ts';
import { QUESTION_DEFAULTS, REQUIRED_FIELDS } from '../../web/src/question/defaults.ts';

type Property = { default?: unknown; minimum?: number; maximum?: number };
type ObjectSchema = { properties: Record<string, Property>; required?: string[] };

/** The JSON Schema of an object, found behind the name that it is filed under. */
function objectSchema(schema: z.ZodType, id: string): ObjectSchema {
  const json = z.toJSONSchema(schema, { io: 'input' });
  return (json.properties ? json : json.$defs?.[id]) as unknown as ObjectSchema;
}

const { properties: assumptions } = objectSchema(assumptionsSchema, 'Assumptions');
const { properties, required = [] } = objectSchema(questionSchema, 'Question');

describe('what the page knows of the schemas', () => {
  it('is every assumption, with its standard value and its limits', () => {
    expect(ASSUMPTIONS.map(({ key }) => key)).toEqual(Object.keys(assumptions));
    for (const { key, standard, min, max } of ASSUMPTIONS) {
      const { default: given, minimum, maximum } = assumptions[key];
      expect({ key, standard, min, max }).toEqual({ key, standard: given, min: minimum, max: maximum });
    }
  });

  it('is every default of a question', () => {
    const given = Object.entries(properties)
      .filter(
        ([key, { default: standard }]) =>
          standard !== undefined && key !== 'assume' && !Array.isArray(standard),
      )
      .map(([key, { default: standard }]) => [key, standard]);
    expect(QUESTION_DEFAULTS).toEqual(Object.fromEntries(given));
  });

  it('is every field without which there is no question', () => {
    expect([...REQUIRED_FIELDS].sort()).toEqual([...required].sort());
  });
});

describe('the tokens of the style sheet', () => {
  const css = readFileSync(new URL('../../web/src/style/tokens.css', import.meta.url), 'utf8');
  const [light, dark] = css.split('@media');
  const valuesIn = (text: string) =>
    Object.fromEntries(
      [...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]+);/g)].map(([, name, hex]) => [name, hex]),
    );

  it.each([
    ['light', LIGHT_TOKENS, valuesIn(light)],
    ['dark', DARK_TOKENS, { ...valuesIn(light), ...valuesIn(dark) }],
  ] as const)('are those of the charts, %s', (_, tokens, page) => {
    const { odds, softInk, font, ...rest } = tokens;
    expect(page).toMatchObject({ ...rest, 'soft-ink': softInk });
    expect(font).toContain('Atkinson');
    expect(odds.map((_hex, step) => page[`odds-${step}`])).toEqual(odds);
  });
});
