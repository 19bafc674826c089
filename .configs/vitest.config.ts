import { defineConfig } from 'vitest/config';

/** Two runs: `fast` needs nothing but Node; `browser` drives a real one against the built program. */
export default defineConfig({
  root: new URL('../', import.meta.url).pathname,
  test: {
    maxWorkers: 2,
    // A busy machine takes its time; what never comes still fails. Tests have no shorter limits of their own.
    testTimeout: 240_000,
    hookTimeout: 240_000,
    expect: { poll: { timeout: 30_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'fast',
          include: ['test/**/*.test.ts'],
          exclude: ['test/browser/**', 'test/built/**'],
        },
      },
      {
        extends: true,
        test: {
          name: 'built',
          include: ['test/browser/**/*.test.ts', 'test/built/**/*.test.ts'],
        },
      },
    ],
    env: { TZ: 'America/Denver' },
  },
});
