import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';

const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Families of transforms that no chart of ours uses: maps, forces, trees, fits, labels, word clouds, linked filters. */
const UNUSED = /^vega-(?:geo|force|hierarchy|label|regression|voronoi|wordcloud|crossfilter)$/;

/** What the parts that stay take from libraries of maps, by name; nothing calls it. */
const MAPS = /^(?:d3-geo|vega-projection|topojson-client)$/;
const NO_MAPS = ['geoArea', 'geoBounds', 'geoCentroid', 'projection', 'feature', 'mesh'];

/** Leaves these out of the drawing code: a sixth of it. */
const smallerDrawing: Plugin = {
  name: 'smaller-drawing',
  enforce: 'pre',
  resolveId(id, importer) {
    // Its parts in place of its bundle, so that some can be left out.
    if (id === 'vega') return folder('../node_modules/vega/index.js');
    if (MAPS.test(id) && importer?.includes('/node_modules/vega')) return '\0no-maps';
    return UNUSED.test(id) ? '\0unused-transforms' : undefined;
  },
  load(id) {
    if (id === '\0no-maps') return NO_MAPS.map((name) => `export const ${name} = undefined;`).join('\n');
    return id === '\0unused-transforms' ? 'export {};' : undefined;
  },
};

/** The page: built to dist/web, where the server finds it. Nothing is inlined, so that a strict policy holds. */
export default defineConfig({
  root: folder('../web'),
  publicDir: folder('../web/public'),
  plugins: [smallerDrawing],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: folder('../dist/web'),
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    // The drawing code is large by nature and fetched only when a chart is to be drawn.
    chunkSizeWarningLimit: 900,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: {
        // What several places share comes in one piece: many small ones wait for each other.
        codeSplitting: {
          groups: [{ name: 'shared', test: /\/src\/(?!handout\/)[^?]*\.tsx?$/, minShareCount: 2 }],
        },
      },
    },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:8787' } },
});
