import { defineConfig } from 'vitest/config';

/** Two runs: `fast` needs nothing but Node; `browser` drives a real one against the built program. */
export default defineConfig({
  root: new URL('../', import.meta.url).pathname,
  test: {
    maxWorkers: 2,
    // A page answers in its own time on a busy machine; what never comes still fails.
    expect: { poll: { timeout: 20_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'fast',
          include: ['test/**/*.test.ts'],
          exclude: ['test/browser/**', 'test/built/**'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'built',
          include: ['test/browser/**/*.test.ts', 'test/built/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
    env: { TZ: 'America/Denver' },
  },
});
