import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';

/** Pages that are looked at together; more would only wait for each other. */
const AT_ONCE = 4;

/**
 * Looks at empty pages, some at the same time, each with no memory of the others; no page may throw.
 * @param look what is done with a page, which it must lead to its address itself
 */
export async function lookAtEach<T extends readonly (string | undefined)[]>(
  browser: Browser,
  each: readonly T[],
  look: (page: Page, about: T) => Promise<void>,
): Promise<void> {
  const left = [...each];
  const work = async () => {
    for (let about = left.shift(); about !== undefined; about = left.shift()) {
      const context = await browser.newContext({ reducedMotion: 'reduce', locale: 'en-US' });
      const page = await context.newPage();
      const thrown: string[] = [];
      page.on('pageerror', (error) => thrown.push(error.message));
      await look(page, about).catch((cause: unknown) => {
        throw new Error(`At “${about.join(' ')}”: ${cause}`, { cause });
      });
      expect(thrown, about.join(' ')).toEqual([]);
      await context.close();
    }
  };
  await Promise.all(Array.from({ length: Math.min(AT_ONCE, left.length) }, work));
}
