import type { Page } from 'playwright-core';

/**
 * Time from leaving a date blank with another date in it to the answer to that date on screen, measured in the page.
 * [ms]
 */
export async function answerTime(page: Page, blank: string, typed: string, shows: string): Promise<number> {
  await page.getByTestId(blank).fill(typed);
  return page.evaluate(
    ({ testId, text }) =>
      new Promise<number>((done) => {
        const main = document.querySelector('main') as HTMLElement;
        const from = performance.now();
        const watch = new MutationObserver(() => {
          if (!main.innerText.replaceAll('\u00a0', ' ').includes(text) || main.querySelector('[data-stale]'))
            return;
          watch.disconnect();
          requestAnimationFrame(() => done(performance.now() - from));
        });
        watch.observe(main, { childList: true, subtree: true, characterData: true, attributes: true });
        (document.querySelector(`[data-testid="${testId}"]`) as HTMLElement).blur();
      }),
    { testId: blank, text: shows },
  );
}
