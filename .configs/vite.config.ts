import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The page: built to dist/web, where the server finds it. Nothing is inlined, so that a strict policy holds. */
export default defineConfig({
  root: folder('../web'),
  publicDir: folder('../web/public'),
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
