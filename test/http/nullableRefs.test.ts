import { expect, it } from 'vitest';
import { nullableRefs } from '../../src/http/nullableRefs.ts';

it('says "this shape, or null" as a choice, with its notes, wherever it stands', () => {
  const given = {
    properties: {
      mark: { allOf: [{ $ref: '#/m' }, { type: ['string', 'null'], description: 'How known' }] },
      list: [{ allOf: [{ $ref: '#/m' }, { type: 'null' }] }],
    },
  };
  expect(nullableRefs(given)).toEqual({
    properties: {
      mark: { description: 'How known', anyOf: [{ $ref: '#/m' }, { type: 'null' }] },
      list: [{ anyOf: [{ $ref: '#/m' }, { type: 'null' }] }],
    },
  });
});

it('leaves everything else as it is', () => {
  const given = { allOf: [{ $ref: '#/a' }, { description: 'no null here' }], type: 'object', none: null };
  expect(nullableRefs(given)).toEqual(given);
});
