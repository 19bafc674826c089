import { readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { describeWithRecords, sharedWeather } from '../../sharedWeather.ts';
import { type Judged, judge, verdictOf } from './judge.ts';
import { placesIn } from './places.ts';
import { PUBLISHED_CASES } from './registry.ts';
import { overviewRow, publishedCasesPage, recordedVerdict } from './table.ts';

const PAGE = new URL('./README.md', import.meta.url);

const judged: Judged[] = [];

beforeAll(async () => {
  const places = sharedWeather === null ? null : placesIn(sharedWeather);
  for (const given of PUBLISHED_CASES) judged.push(await judge(given, places));
  console.log(judged.map(printed).join('\n'));
});

function printed(one: Judged): string {
  const { given, state, results } = one;
  const said = Object.values(results).map((result) => `${result.model} [${verdictOf(result)}]`);
  const verdict = state === 'skipped' ? 'SKIPPED, no real records here' : recordedVerdict(one);
  return `${given.id}  ${verdict}\n     ${said.length > 0 ? said.join('; ') : given.why}`;
}

function verdictsHold(one: Judged): void {
  if (one.given.kind !== 'run') throw new Error(`${one.given.id} is not run`);
  const recorded = Object.entries(one.given.checks).map(([name, check]) => [name, check.recorded]);
  const computed = Object.keys(one.given.checks).map((name) => [name, verdictOf(one.results[name])]);
  expect(computed, `${one.given.id}: a verdict has changed; record it in the case file and say why`).toEqual(
    recorded,
  );
}

const runIds = (needsRecords: boolean) =>
  PUBLISHED_CASES.filter((given) => given.kind === 'run' && given.needsRecords === needsRecords).map(
    ({ id }) => id,
  );
const byId = (id: string): Judged => {
  const found = judged.find(({ given }) => given.id === id);
  if (!found) throw new Error(`no case ${id}`);
  return found;
};

describe('published validation cases', () => {
  it('lists V01 to V37 once each, every one with a reason', () => {
    const wanted = Array.from({ length: 37 }, (_, index) => `V${String(index + 1).padStart(2, '0')}`);
    expect(PUBLISHED_CASES.map(({ id }) => id)).toEqual(wanted);
    for (const given of PUBLISHED_CASES) {
      expect(given.why.length, given.id).toBeGreaterThan(20);
      if (given.kind !== 'run') continue;
      expect(given.assumptions.length, given.id).toBeGreaterThan(0);
      expect(Object.keys(given.checks).length, given.id).toBeGreaterThan(0);
    }
  });

  it.each(runIds(false))('%s keeps its recorded verdicts', (id) => verdictsHold(byId(id)));
});

describeWithRecords('published validation cases on real records', () => {
  it.each(runIds(true))('%s keeps its recorded verdicts', (id) => verdictsHold(byId(id)));
});

describe('the page of published cases', () => {
  it('holds what the cases give', () => {
    const complete = judged.every(({ state }) => state !== 'skipped');
    if (process.env.UPDATE_TABLE === '1') {
      if (!complete) throw new Error('The table needs the real records: ../shared/weather is not there.');
      writeFileSync(PAGE, publishedCasesPage(judged));
    }
    const page = readFileSync(PAGE, 'utf8');
    if (complete) {
      expect(page).toBe(publishedCasesPage(judged));
      return;
    }
    const lines = new Set(page.split('\n'));
    const computable = judged.filter(({ state }) => state !== 'skipped');
    expect(computable.length).toBeGreaterThan(10);
    expect(computable.map(overviewRow).filter((line) => !lines.has(line))).toEqual([]);
  });
});
