import { rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll } from 'vitest';

const projectRoot = fileURLToPath(new URL('../', import.meta.url));

/**
 * A script of the tests as one file of plain JavaScript, which starts far quicker than its sources; it is removed when the
 * running test file has ended.
 * @param script path below the project's folder
 * @returns path of the file
 */
export async function bundled(script: string): Promise<string> {
  const outdir = join(projectRoot, 'test-output', `${process.pid}-${basename(script, '.ts')}`);
  afterAll(() => rmSync(outdir, { recursive: true, force: true }));
  await build({
    absWorkingDir: projectRoot,
    entryPoints: { script },
    outdir,
    ...{ bundle: true, platform: 'node', format: 'esm', target: 'node20', logLevel: 'warning' },
    // Native code, worker threads and data files stay where npm put them.
    external: ['@duckdb/*', 'piscina', 'vega-datasets'],
    banner: {
      js: "import { createRequire as bundledRequire } from 'node:module'; const require = bundledRequire(import.meta.url);",
    },
  });
  return join(outdir, 'script.js');
}
