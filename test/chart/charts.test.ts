import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import type { ChartSpec } from '../../src/chart/frame.ts';
import { DARK_TOKENS, PAGE_TOKENS } from '../../src/chart/theme.ts';
import { answer, chartsOf } from './fixture.ts';

const schema = JSON.parse(
  readFileSync(new URL('../../node_modules/vega-lite/build/vega-lite-schema.json', import.meta.url), 'utf8'),
);
const ajv = new Ajv({ strict: false, validateFormats: false });
const valid = ajv.compile(schema);

/** Compiles a specification and collects what the compiler has to say about it. */
function compiled(spec: ChartSpec) {
  const said: string[] = [];
  const say = (...words: unknown[]) => {
    said.push(words.join(' '));
    return logger;
  };
  const logger = { level: () => logger, error: say, warn: say, info: () => logger, debug: () => logger };
  const vega = compile(structuredClone(spec) as TopLevelSpec, { logger: logger as never }).spec;
  return { said, vega };
}

/** Draws without a browser, with interpreted expressions as the page does. */
async function drawn(spec: ChartSpec): Promise<string> {
  const runtime = parse(compiled(spec).vega, undefined, { ast: true });
  const view = new View(runtime, { renderer: 'none', expr: expressionInterpreter });
  return view.toSVG();
}

/** A specification with two rows of each data set: what the snapshot holds. */
const sketch = (spec: ChartSpec) => ({
  ...spec,
  datasets: Object.fromEntries(Object.entries(spec.datasets).map(([name, rows]) => [name, rows.slice(0, 2)])),
});

describe.each(Object.entries(chartsOf(answer)))('%s', (name, spec) => {
  it('follows the Vega-Lite schema', () => {
    expect(valid(spec), JSON.stringify(valid.errors?.[0])).toBe(true);
  });

  it('compiles without a warning', () => {
    expect(compiled(spec).said).toEqual([]);
  });

  it('draws, and every coordinate is a number', async () => {
    const svg = await drawn(spec);
    expect(svg).toMatch(/^<svg/);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('has no data set that no layer draws, and draws no data set that it lacks', () => {
    const used = new Set(spec.layer.map(({ data }) => (data as { name: string }).name));
    expect([...used].sort()).toEqual(Object.keys(spec.datasets).sort());
  });

  it('says its finding to those who cannot see it', () => {
    expect(spec.description).toBe('A finding in words.');
  });

  it('stays as it was', async () => {
    await expect(`${JSON.stringify(sketch(spec), null, 2)}\n`).toMatchFileSnapshot(
      `../snapshots/chart/${name}.json`,
    );
  });
});

describe('all charts', () => {
  it('leave their rows as they were', () => {
    const copy = structuredClone(answer);
    chartsOf(copy);
    expect(copy).toEqual(answer);
  });

  it('keep all time scales in UTC, so that no date slips a day west of Greenwich', () => {
    for (const spec of Object.values(chartsOf(answer))) {
      const scales = (compiled(spec).vega.scales ?? []).filter(({ type }) => `${type}`.match(/time|utc/));
      for (const { type } of scales) expect(type).toBe('utc');
    }
  });

  it('draw with the tokens of any theme and hold no other colour', () => {
    for (const tokens of [DARK_TOKENS, PAGE_TOKENS]) {
      const known = new Set<string>([...Object.values(tokens).flat(), 'transparent']);
      const colours = JSON.stringify(chartsOf(answer, tokens)).matchAll(
        /"(?:color|fill|stroke)":"([^"]*)"|"(#[0-9a-f]{3,8})"/g,
      );
      let seen = 0;
      for (const [, named, hex] of colours) {
        expect(known).toContain(named ?? hex);
        seen++;
      }
      expect(seen).toBeGreaterThan(20);
    }
  });

  it('take a title and a source line where no caption stands beside them', async () => {
    for (const spec of Object.values(chartsOf(answer, undefined, 'A title'))) {
      expect(valid(spec)).toBe(true);
      const svg = await drawn(spec);
      expect(svg).toContain('A title');
      expect(svg).toContain('Invented record');
    }
  });
});
