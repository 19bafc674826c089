import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { csvOf } from '../../web/src/charts/csv.ts';
import { svgWithMade, withMade } from '../../web/src/charts/madeBy.ts';

const made = { by: 'Drywake 1.2.3, 2026-11-25', asked: '/?v=1&residual=flumioxazin&crop=a<b' };

describe('what a file of the page says of itself', () => {
  it('stands in the last columns of a table, on every row, and leaves the others as they are', () => {
    const columns = [{ head: 'Year', cell: (year: number) => year, number: true }];
    expect(csvOf(withMade(columns, made), [2001, 2002])).toBe(
      [
        'Year,Made by,Asked',
        '2001,"Drywake 1.2.3, 2026-11-25",/?v=1&residual=flumioxazin&crop=a<b',
        '2002,"Drywake 1.2.3, 2026-11-25",/?v=1&residual=flumioxazin&crop=a<b',
        '',
      ].join('\r\n'),
    );
  });

  it('stands inside a drawing, where nothing of it is drawn, once and escaped', () => {
    const svg = svgWithMade('<svg width="3"><svg><path/></svg></svg>', 'Odds < 2 & more', made);
    expect(svg).toBe(
      '<svg width="3"><metadata>Odds &lt; 2 &amp; more\nMade by Drywake 1.2.3, 2026-11-25.\n' +
        'Asked: /?v=1&amp;residual=flumioxazin&amp;crop=a&lt;b</metadata><svg><path/></svg></svg>',
    );
  });

  it('is passed over by three files only, which say it themselves', () => {
    const root = new URL('../../web/src/', import.meta.url);
    const calls = readdirSync(root, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name) && name !== 'charts/saveFile.ts')
      .flatMap((name) =>
        [
          ...readFileSync(new URL(name, root), 'utf8').matchAll(/\b(createObjectURL|saveFile|saveCsv)\(/g),
        ].map(([, call]) => `${name}: ${call}`),
      );
    // The list's CSV is the server's and says it in columns of its own; GeoJSON in its member `about`; the answer in one file at its foot.
    expect(calls.sort()).toEqual([
      'fields/list/ListPanel.tsx: saveCsv',
      'handout/SaveOneFile.tsx: saveFile',
      'region/RegionFiles.tsx: saveFile',
    ]);
  });
});
