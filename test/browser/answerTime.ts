import type { Page } from 'playwright-core';

/**
 * Time from a change to the next frame in which the answer to it stands on screen, measured in the page. A blank is left
 * with another text in it, a choice made, a button pressed. [ms]
 * @param selector the blank, the choice or the button
 * @param value what is typed or chosen; null for a button
 */
export async function answerTime(page: Page, selector: string, value: string | null): Promise<number> {
  const control = page.locator(selector);
  const kind = await control.evaluate((element) => element.tagName);
  if (kind === 'INPUT') await control.fill(value ?? '');
  return control.evaluate(
    (element, chosen) =>
      new Promise<number>((done) => {
        const main = document.querySelector('main') as HTMLElement;
        const from = performance.now();
        let asked = false;
        const watch = new MutationObserver(() => {
          const waits = main.querySelector('[data-stale]') !== null;
          asked ||= waits;
          if (!asked || waits) return;
          watch.disconnect();
          requestAnimationFrame(() => done(performance.now() - from));
        });
        watch.observe(main, { childList: true, subtree: true, characterData: true, attributes: true });
        if (element instanceof HTMLSelectElement) {
          element.value = chosen ?? '';
          element.dispatchEvent(new Event('change', { bubbles: true }));
        } else if (element instanceof HTMLInputElement) element.blur();
        else (element as HTMLElement).click();
      }),
    value,
  );
}
