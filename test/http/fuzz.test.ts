import { describe, expect, it } from 'vitest';
import { catalogue } from '../catalogue/loaded.ts';
import fc, { SEED } from '../fastCheck.ts';
import { arbitraryOf, HOSTILE, type Schema } from './arbitraryOf.ts';
import { demoDeps } from './demoDeps.ts';
import { interfaceDocument, type Operation } from './interfaceDocument.ts';
import { wholeApp } from './wholeApp.ts';

const { app, desk, log } = await wholeApp();
const { refs, operations, faultOf } = await interfaceDocument(app);

const names = [
  ...catalogue.actives.map(({ isoName }) => isoName),
  ...catalogue.crops.map(({ name }) => name),
];
/** Members of the questions that the routes take, which make sense together. */
const workedMembers: Record<string, unknown> = {
  ...demoDeps.example.question,
  plantFrom: '2027-04-01',
  plantTo: '2027-06-01',
  interval: '4 months',
  replace: true,
  backup: await desk.backup(),
};

/** Names that lead further into the program than letters at random. */
const words: Record<string, readonly unknown[]> = {
  station: ['demo-invented', 'demo-invented', 'demo-invented', 'nowhere', ''],
  temperaturesFrom: ['demo-invented', 'nowhere'],
  residual: [...catalogue.actives.map(({ isoName }) => isoName), 'x'],
  active: names,
  crop: [...catalogue.crops.map(({ name }) => name), 'radish + pea', '+', 'x'],
  id: ['home-quarter', 'shed-one', 'new', '../x'],
  treatmentId: ['stubble', 'x'],
  labelEntry: ['shed-one', 'x'],
  interval: ['0 days', '30 days', '9 months', '1 month 15 days', '400 months', '-1 month', 'soon'],
};

/** A value of the schema; where it shares members with the worked question, mostly that one with some of them changed. */
function workedFrom(schema: Schema): fc.Arbitrary<unknown> {
  const whole = arbitraryOf(schema, refs, words);
  const { properties = {} } = schema.$ref ? refs[schema.$ref.split('/').at(-1) ?? ''] : schema;
  const worked = Object.fromEntries(Object.entries(workedMembers).filter(([key]) => key in properties));
  const keys = Object.keys(properties);
  if (Object.keys(worked).length === 0) return whole;
  const changed = fc
    .tuple(whole, fc.subarray(keys, { maxLength: Math.min(3, keys.length) }))
    .map(([value, some]) => ({
      ...worked,
      ...Object.fromEntries(
        Object.entries(value as Record<string, unknown>).filter(([key]) => some.includes(key)),
      ),
    }));
  return fc.oneof({ weight: 4, arbitrary: changed }, { weight: 1, arbitrary: whole });
}

/** A value of the schema, now and then with one member exchanged for what does not belong there. */
function damaged(schema: Schema): fc.Arbitrary<unknown> {
  const good = workedFrom(schema);
  const hostile = fc.constantFrom(...HOSTILE);
  const exchanged = fc.tuple(good, hostile, fc.nat(), fc.string()).map(([value, strange, at, key]) => {
    if (typeof value !== 'object' || value === null) return strange;
    const keys = [...Object.keys(value), key];
    return { ...value, [keys[at % keys.length]]: strange };
  });
  return fc.oneof(
    { weight: 3, arbitrary: good },
    { weight: 2, arbitrary: exchanged },
    { weight: 1, arbitrary: hostile },
  );
}

/** What the headers of versions may say. */
const VERSIONS = ['"1"', '"2"', '3', '*', '"x"', '0', '"9999999999"', ''];

const textOf = (value: unknown): string =>
  typeof value === 'string' ? value : (JSON.stringify(value) ?? '');

/** Requests to one operation. */
function requestTo(path: string, method: string, { parameters = [], requestBody }: Operation) {
  const part = (place: string) => parameters.filter((one) => one.in === place);
  const valuesOf = (place: string) =>
    fc.record(Object.fromEntries(part(place).map(({ name, schema }) => [name, damaged({ ...schema })])), {
      requiredKeys: part(place).flatMap(({ name, required }) => (required || place === 'path' ? [name] : [])),
    });
  const headers = fc.record(
    Object.fromEntries(part('header').map(({ name }) => [name, fc.constantFrom(...VERSIONS)])),
    { requiredKeys: [] },
  );
  const [type, content] = Object.entries(requestBody?.content ?? {})[0] ?? [];
  const body = content === undefined ? fc.constant(undefined) : damaged(content.schema);
  return fc
    .tuple(valuesOf('path'), valuesOf('query'), headers, body)
    .map(([inPath, inQuery, given, value]) => {
      const filled = path.replace(/\{(\w+)\}/g, (_, name) => encodeURIComponent(textOf(inPath[name])));
      const query = new URLSearchParams(Object.entries(inQuery).map(([key, one]) => [key, textOf(one)]));
      return {
        address: `http://localhost${filled}?${query}`,
        init: {
          method,
          headers: { ...given, ...(type && { 'content-type': type }) },
          ...(type && { body: JSON.stringify(value) }),
        },
      };
    });
}

/** What only answers where the version is right, or the text is a table; their own tests show that. */
const SELDOM = /\/undo$|\.csv$|import|batch$/;

const RUNS = Number(process.env.FUZZ_RUNS ?? 30);
/** Rounds of so many runs after which an answer must have been among them. */
const MOST_ROUNDS = 40;
/** Heavy routes are asked less often. [ms] */
const LONGEST_MS = RUNS * 500;
/**
 * No request may run on without bound. The heaviest that a question can ask for, eleven sprays caught by leaves that hold
 * them long, took 10 s beside other work; this leaves room for a slow machine. [ms]
 */
const MOST_MS = 60_000;

describe('every route, with what its schema allows and what it does not', () => {
  it.each(operations.map(({ path, method, operation }) => [method, path, operation] as const))(
    '%s %s never fails of itself and answers in its own shape',
    async (method, path, operation) => {
      const statuses = new Set<number>();
      const isAnswered = () => method !== 'POST' || SELDOM.test(path) || statuses.has(200);
      const property = fc.asyncProperty(requestTo(path, method, operation), async ({ address, init }) => {
        log.length = 0;
        const start = performance.now();
        const response = await app.request(address, init as RequestInit);
        expect(performance.now() - start).toBeLessThan(MOST_MS);
        statuses.add(response.status);
        expect(log).toEqual([]);
        expect(response.status).toBeLessThan(500);
        expect(response.headers.get('set-cookie')).toBeNull();
        expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
        // An empty name in an address leads to another route, or to none.
        const asked = new URL(address).pathname;
        if (asked.split('/').length !== path.split('/').length || asked.endsWith('/')) return;
        expect(await faultOf(path, method, response)).toBeNull();
      });
      // Without an answer among the refusals a run would have shown little: it is then gone on with.
      for (let round = 0; round < MOST_ROUNDS && (round === 0 || !isAnswered()); round++) {
        await fc.assert(property, {
          ...{ numRuns: RUNS, interruptAfterTimeLimit: LONGEST_MS },
          // Another round draws other values.
          seed: SEED + round,
        });
      }
      expect(isAnswered()).toBe(true);
    },
  );
});
