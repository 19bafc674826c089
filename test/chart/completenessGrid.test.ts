import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Ajv } from 'ajv';
import { parse, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { checkStation } from '../../src/app/checkStation.ts';
import { dayNumberOf } from '../../src/calendar.ts';
import { completenessGrid, completenessRows } from '../../src/chart/completenessGrid.ts';
import { LIGHT_TOKENS } from '../../src/chart/theme.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';

// 2001 and 2002 with 6 days of February 2001 missing.
const rain = Array.from({ length: 730 }, (_, day) => (day >= 33 && day < 39 ? null : 10));
const temperatures = Array.from({ length: 730 }, () => 50);
const { completeness } = checkStation(
  smallRecord({ rain, maxTemp: temperatures, minTemp: temperatures }, { firstDay: dayNumberOf(2001, 1, 1) }),
);
const options = { tokens: LIGHT_TOKENS, description: 'Two years, one of them with a gap in February.' };

describe('completenessRows', () => {
  it('gives a row for each month of each year, filled by the share of its days', () => {
    const rows = completenessRows(completeness, 'rain');
    expect(rows.length).toBe(24);
    const february = rows[1];
    expect(february).toMatchObject({
      year: 2001,
      month: 2,
      daysPresent: 22,
      days: 28,
      state: 'does not stand',
    });
    expect((february.filledTo - february.start) / (february.end - february.start)).toBeCloseTo(22 / 28, 12);
    expect(rows.filter(({ state }) => state === 'whole').length).toBe(23);
    expect(completenessRows(completeness, 'temperatures').every(({ state }) => state === 'whole')).toBe(true);
  });
});

describe('completenessGrid', () => {
  const rows = completenessRows(completeness, 'rain');
  const before = structuredClone(rows);
  const spec = completenessGrid(rows, options);

  it('fits the Vega-Lite schema and compiles without a warning', () => {
    const schemaPath = createRequire(import.meta.url).resolve('vega-lite/vega-lite-schema.json');
    const ajv = new Ajv({ strict: false, validateFormats: false });
    const valid = ajv.validate(
      JSON.parse(readFileSync(schemaPath, 'utf8')),
      JSON.parse(JSON.stringify(spec)),
    );
    expect(ajv.errors ?? []).toEqual([]);
    expect(valid).toBe(true);
    const warnings: unknown[] = [];
    const logger = {
      level: () => logger,
      error: () => logger,
      warn: (...words: unknown[]) => {
        warnings.push(words);
        return logger;
      },
      info: () => logger,
      debug: () => logger,
    };
    compile(spec as TopLevelSpec, { logger: logger as never });
    expect(warnings).toEqual([]);
  });

  it('leaves its rows as they were, and names its axes', () => {
    expect(rows).toEqual(before);
    const text = JSON.stringify(spec);
    expect(text).toContain('"title":"Month"');
    expect(text).toContain('"title":"Year"');
  });

  it('draws a mark for every month, and an outline only where the total does not stand', async () => {
    const view = new View(parse(compile(spec as TopLevelSpec).spec, undefined, { ast: true }), {
      renderer: 'none',
      expr: expressionInterpreter,
    });
    const svg = await view.toSVG();
    view.finalize();
    expect(spec.datasets.cells.length).toBe(24);
    expect(spec.datasets.standing.length).toBe(23);
    expect(spec.datasets.failing.length).toBe(1);
    expect(svg.match(/aria-roledescription="rect mark"|<path /g)?.length ?? 0).toBeGreaterThanOrEqual(24);
    expect(svg).toContain('>Feb<');
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });
});
