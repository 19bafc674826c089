import { expect, it } from 'vitest';
import { createApp } from '../../src/http/createApp.ts';
import { problemSchema } from '../../src/schema/answer.ts';
import { cropViewSchema } from '../../src/schema/catalogueCropView.ts';
import { activeViewSchema, catalogueListSchema } from '../../src/schema/catalogueView.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { demoDeps } from './demoDeps.ts';

const app = createApp(demoDeps);
const get = async (path: string) => {
  const response = await app.request(path);
  return { status: response.status, body: await response.json() };
};

it('tells the catalogue at a glance', async () => {
  const { status, body } = await get('/api/catalogue');
  expect(status).toBe(200);
  expect(catalogueListSchema.parse(body).crops.map(({ name }) => name)).toContain('lentil');
});

it('tells one active, by any spelling, and one crop with its rows', async () => {
  const whole = activeViewSchema.parse((await get('/api/catalogue/2%2C4-d')).body);
  expect(whole).toMatchObject({ name: '2,4-D', country: 'US', rows: [] });
  const { body } = await get('/api/catalogue/imazamox?crop=canola&country=CA');
  const one = activeViewSchema.parse(body);
  expect(one.crops[0].interval).toBe('11 months');
  expect(one.rows.length).toBeGreaterThan(2);
});

it('tells one crop, with every active before it, the shortest interval first', async () => {
  const { status, body } = await get('/api/catalogue/crop/lentils?country=US');
  expect(status).toBe(200);
  const view = cropViewSchema.parse(body);
  expect(view.name).toBe('lentil');
  expect(view.actives.length).toBe(catalogue.actives.length);
  const { body: pair } = await get('/api/catalogue/imazamox?crop=lentil');
  const { active: _, group: __, ...same } = view.actives.find(({ active }) => active === 'imazamox') ?? {};
  expect(same).toEqual(activeViewSchema.parse(pair).crops[0]);
  const known = view.actives.flatMap(({ months, days }) =>
    months === null ? [] : [months * 30.4 + (days ?? 0)],
  );
  expect(known).toEqual([...known].sort((a, b) => a - b));
});

it.each([
  ['/api/catalogue/crop/water', 'CROP_UNKNOWN'],
  ['/api/catalogue/water', 'RESIDUAL_UNKNOWN'],
  ['/api/catalogue/imazamox?crop=water', 'CROP_UNKNOWN'],
  ['/api/catalogue/imazamox?country=AU', 'REQUEST_UNREADABLE'],
])('refuses %s', async (path, code) => {
  const { status, body } = await get(path);
  expect(status).toBe(422);
  expect(problemSchema.parse(body).code).toBe(code);
});
