import { rmSync } from 'node:fs';
import { build } from 'esbuild';
import { build as buildPage } from 'vite';

/** Builds the program into dist/: one bundle with a chunk for each command, and the page. */
const root = new URL('../', import.meta.url).pathname;

for (const folder of ['bin', 'web']) rmSync(`${root}dist/${folder}`, { recursive: true, force: true });
await build({
  absWorkingDir: root,
  entryPoints: { drywake: 'src/cli/main.ts', worker: 'src/worker/worker.ts', library: 'src/index.ts' },
  outdir: 'dist/bin',
  bundle: true,
  splitting: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  sourcemap: true,
  legalComments: 'linked',
  logLevel: 'warning',
  // Native code, worker threads and data files stay where npm put them.
  external: ['@duckdb/*', 'piscina', 'vega-datasets'],
  banner: {
    js: "#!/usr/bin/env node\nimport { createRequire as drywakeRequire } from 'node:module'; const require = drywakeRequire(import.meta.url);",
  },
});
await buildPage({ configFile: `${root}.configs/vite.config.ts`, logLevel: 'warn' });
