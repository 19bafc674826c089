import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';

const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Families of transforms that no chart of ours uses: maps, forces, trees, fits, labels, word clouds, linked filters. */
const UNUSED = /^vega-(?:geo|force|hierarchy|label|regression|voronoi|wordcloud|crossfilter)$/;

/** Leaves these families out of the drawing code: an eighth of it. */
const smallerDrawing: Plugin = {
  name: 'smaller-drawing',
  enforce: 'pre',
  resolveId(id) {
    // Its parts in place of its bundle, so that some can be left out.
    if (id === 'vega') return folder('../node_modules/vega/index.js');
    return UNUSED.test(id) ? '\0unused-transforms' : undefined;
  },
  load: (id) => (id === '\0unused-transforms' ? 'export {};' : undefined),
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
