import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { layeredReader } from '../../src/app/layeredReader.ts';
import { createWeatherInbox } from '../../src/app/weatherInbox.ts';
import { createApp } from '../../src/http/createApp.ts';
import { OWN_COMPUTER } from '../../src/http/guard/serverGuard.ts';
import { createReceivedFiles } from '../../src/source/receivedFiles.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { createServedStore } from '../../src/store/servedStore.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { tickingClock } from '../store/openFields.ts';
import { arbitraryOf, HOSTILE, type Schema } from './arbitraryOf.ts';
import { demoDeps } from './demoDeps.ts';
import { deskOver } from './deskOver.ts';

interface Operation {
  readonly parameters?: readonly {
    readonly in: string;
    readonly name: string;
    readonly required?: boolean;
    readonly schema: Schema;
  }[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> };
  readonly responses: Readonly<
    Record<string, { readonly content?: Readonly<Record<string, { readonly schema: Schema }>> }>
  >;
}

/** Nothing but a test runs this often from one place. */
const guard = { ...OWN_COMPUTER, requestsPerSecond: Number.POSITIVE_INFINITY };
const log: string[] = [];
const folder = mkdtempSync(join(tmpdir(), 'drywake-fuzz-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const store = createServedStore(folder);
const weather = layeredReader([store.reader, demoDeps.weather]);
const fields = await openFieldsStore(folder, { now: tickingClock() });
afterAll(() => fields.close());
await fields.fields.put(fieldOf(), null);
await fields.labels.put(labelOf(), null);
const { desk, labels } = deskOver(fields, folder, weather);
const app = createApp({
  ...demoDeps,
  guard,
  desk,
  labels,
  weather,
  climates: createClimateCache(weather),
  inbox: createWeatherInbox({
    ...createReceivedFiles(join(folder, 'received')),
    weatherFiles: findRecordFiles,
    importStore: store.openToWrite,
  }),
  log: (line) => void log.push(line),
});
const document = await (await app.request('/api/openapi.json')).json();
const refs: Record<string, Schema> = document.components.schemas;
const operations = Object.entries<Record<string, Operation>>(document.paths).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, operation]) => ({ path, method: method.toUpperCase(), operation })),
);

const ajv = new Ajv2020({ strict: false, validateFormats: false });
ajv.addSchema({ ...document, $id: 'interface' });
const pointer = (text: string) => encodeURIComponent(text.replaceAll('~', '~0').replaceAll('/', '~1'));

/** What is wrong with an answer by the interface's own document; null where nothing is. */
function faultOf(path: string, method: string, status: number, body: unknown): string | null {
  const { responses } = document.paths[path][method.toLowerCase()] as Operation;
  if (!responses[status]?.content?.['application/json']) return `no shape is given for ${status}`;
  const parts = [
    'paths',
    path,
    method.toLowerCase(),
    'responses',
    String(status),
    'content',
    'application/json',
  ];
  const shape = ajv.getSchema(`interface#/${[...parts, 'schema'].map(pointer).join('/')}`);
  if (shape === undefined) return `no shape is found for ${status}`;
  return shape(body) ? null : ajv.errorsText(shape.errors);
}

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

const textOf = (value: unknown): string =>
  typeof value === 'string' ? value : (JSON.stringify(value) ?? '');

/** Requests to one operation. */
function requestTo(path: string, method: string, { parameters = [], requestBody }: Operation) {
  const part = (place: string) => parameters.filter((one) => one.in === place);
  const valuesOf = (place: string) =>
    fc.record(Object.fromEntries(part(place).map(({ name, schema }) => [name, damaged({ ...schema })])), {
      requiredKeys: part(place).flatMap(({ name, required }) => (required || place === 'path' ? [name] : [])),
    });
  const [type, content] = Object.entries(requestBody?.content ?? {})[0] ?? [];
  const body = content === undefined ? fc.constant(undefined) : damaged(content.schema);
  return fc.tuple(valuesOf('path'), valuesOf('query'), body).map(([inPath, inQuery, value]) => {
    const filled = path.replace(/\{(\w+)\}/g, (_, name) => encodeURIComponent(textOf(inPath[name])));
    const query = new URLSearchParams(Object.entries(inQuery).map(([key, one]) => [key, textOf(one)]));
    return {
      address: `http://localhost${filled}?${query}`,
      init: {
        method,
        ...(type === undefined ? {} : { body: JSON.stringify(value), headers: { 'content-type': type } }),
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
        const type = response.headers.get('content-type') ?? '';
        // An empty name in an address leads to another route, or to none.
        const asked = new URL(address).pathname;
        if (!type.startsWith('application/json') || asked.split('/').length !== path.split('/').length)
          return;
        if (asked.endsWith('/')) return;
        const body = await response.json();
        expect(faultOf(path, method, response.status, body)).toBeNull();
      });
      // Without an answer among the refusals a run would have shown little: it is then gone on with.
      for (let round = 0; round < MOST_ROUNDS && (round === 0 || !isAnswered()); round++) {
        await fc.assert(property, { numRuns: RUNS, interruptAfterTimeLimit: LONGEST_MS });
      }
      expect(isAnswered()).toBe(true);
    },
  );
});
