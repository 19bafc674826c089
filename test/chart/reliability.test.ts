import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Ajv } from 'ajv';
import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { reliability } from '../../src/chart/reliability.ts';
import { LIGHT_TOKENS } from '../../src/chart/theme.ts';

const bins = [
  { meanOdds: 0.06, observed: 0.05, low: 0.01, high: 0.22, forecasts: 103, years: 25 },
  { meanOdds: 0.14, observed: 0.17, low: 0.05, high: 0.34, forecasts: 74, years: 23 },
  { meanOdds: 0.52, observed: 0.46, low: 0.11, high: 0.86, forecasts: 5, years: 3 },
];
const options = {
  tokens: LIGHT_TOKENS,
  description: 'What came lies near the odds given in all three bands.',
  widthPx: 480,
  baseRate: 0.19,
};

describe('reliability chart', () => {
  const before = structuredClone(bins);
  const spec = reliability(bins, options);

  it('fits the Vega-Lite schema, compiles without a warning and draws', async () => {
    const path = createRequire(import.meta.url).resolve('vega-lite/vega-lite-schema.json');
    const ajv = new Ajv({ strict: false, validateFormats: false });
    const valid = ajv.validate(JSON.parse(readFileSync(path, 'utf8')), JSON.parse(JSON.stringify(spec)));
    expect(ajv.errors ?? []).toEqual([]);
    expect(valid).toBe(true);
    const said: unknown[] = [];
    const say = (...words: unknown[]) => {
      said.push(words);
      return logger;
    };
    const logger = { level: () => logger, error: say, warn: say, info: () => logger, debug: () => logger };
    const vega = compile(structuredClone(spec) as TopLevelSpec, { logger: logger as never }).spec;
    expect(said).toEqual([]);
    const view = new View(parse(vega, undefined, { ast: true }), {
      renderer: 'none',
      expr: expressionInterpreter,
    });
    const svg = await view.toSVG();
    expect(svg).toContain('Odds given, in 20');
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('leaves its rows as they were and draws larger dots for bands that are used more', () => {
    expect(bins).toEqual(before);
    const areas = spec.datasets.bands.map((row) => (row as { area: number }).area);
    expect(areas[0]).toBeGreaterThan(areas[1]);
    expect(areas[1]).toBeGreaterThan(areas[2]);
  });

  it('stays as it was', async () => {
    await expect(`${JSON.stringify(spec, null, 2)}\n`).toMatchFileSnapshot(
      '../snapshots/chart/reliability.json',
    );
  });
});
