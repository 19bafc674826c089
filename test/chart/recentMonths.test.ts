import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { recentMonthAt, recentMonths } from '../../src/chart/recentMonths.ts';
import { LIGHT_TOKENS } from '../../src/chart/theme.ts';
import type { RecentRain } from '../../src/schema/completeness.ts';

const rows: RecentRain['months'] = Array.from({ length: 12 }, (_, index) => {
  const month =
    index < 4 ? `2021-${String(index + 9).padStart(2, '0')}` : `2022-${String(index - 3).padStart(2, '0')}`;
  const rainMm = index === 6 ? null : 20 + index;
  return {
    month,
    missingDays: rainMm === null ? 3 : 0,
    rainMm,
    normalMm: 40,
    percentOfNormal: rainMm === null ? null : (rainMm / 40) * 100,
  };
});
const schema = JSON.parse(
  readFileSync(new URL('../../node_modules/vega-lite/build/vega-lite-schema.json', import.meta.url), 'utf8'),
);

describe.each([
  ['wide', 700],
  ['narrow', 320],
])('recentMonths, %s', (_, widthPx) => {
  const before = structuredClone(rows);
  const spec = recentMonths(rows, {
    tokens: LIGHT_TOKENS,
    description: 'Twelve months, one with a gap.',
    widthPx,
    rainUnit: 'mm',
    rainIn: (mm) => mm,
  });

  it('has its months where they are drawn, and none beside them', () => {
    const right = 44 + Number(spec.width);
    const at = (xPx: number) => recentMonthAt(rows, xPx, widthPx)?.month ?? null;
    expect([at(40), at(45), at(right - 1), at(right + 1)]).toEqual([null, '2021-09', '2022-08', null]);
  });

  it('follows the Vega-Lite schema, compiles without a warning, and leaves its rows as they were', () => {
    const ajv = new Ajv({ strict: false, validateFormats: false });
    expect(ajv.validate(schema, JSON.parse(JSON.stringify(spec))), JSON.stringify(ajv.errors?.[0])).toBe(
      true,
    );
    const said: unknown[] = [];
    const say = (...words: unknown[]) => {
      said.push(words);
      return logger;
    };
    const logger = { level: () => logger, error: say, warn: say, info: () => logger, debug: () => logger };
    compile(structuredClone(spec) as TopLevelSpec, { logger: logger as never });
    expect(said).toEqual([]);
    expect(rows).toEqual(before);
  });

  it('draws percents, names the gap, and puts the year under its first months', async () => {
    const runtime = parse(compile(structuredClone(spec) as TopLevelSpec).spec, undefined, { ast: true });
    const svg = await new View(runtime, { renderer: 'none', expr: expressionInterpreter }).toSVG();
    expect(svg).toContain('>50 %<');
    expect(svg).toContain('>gap<');
    expect(svg).toContain('>2021<');
    expect(svg).toContain('>2022<');
    expect(svg).toContain('Rain, mm');
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    expect(spec.datasets.fell.length).toBe(11);
  });
});
