import { describe, expect, it } from 'vitest';
import { goToPlace, LOOK_BACK, type Place } from './atPlace.ts';
import { lookAtEach } from './lookAtEach.ts';
import { served } from './served.ts';

const running = served();

/** Each place, with what stands there once it has filled itself. */
const PLACES: readonly Place[] = [
  ['', 'story-chart'],
  LOOK_BACK,
  ['compare', 'overlay'],
  ['crops', 'crop-grid'],
  ['fields', 'demo-field'],
  ['region', 'region-table'],
  ['labels', 'label-count'],
  ['weather?station=demo-invented', 'worth'],
  ['catalogue', 'catalogue-search'],
];

describe('for those who asked for less motion', () => {
  it('nothing on any place moves by itself', async () => {
    await lookAtEach(running.browser, PLACES, async (page, place) => {
      await goToPlace(page, running.server.address, place);
      const moves = await page.evaluate(() => {
        const long = (times: string) => times.split(',').some((time) => Number.parseFloat(time) > 0);
        const styled = [...document.querySelectorAll('*')].flatMap((element) =>
          [null, '::before', '::after'].flatMap((part) => {
            const { transitionDuration, animationDuration, scrollBehavior } = getComputedStyle(element, part);
            return long(transitionDuration) || long(animationDuration) || scrollBehavior === 'smooth'
              ? [`${element.tagName}.${element.className}${part ?? ''}`]
              : [];
          }),
        );
        return [...styled, ...document.getAnimations().map((one) => `running: ${one.constructor.name}`)];
      });
      expect(moves, place.join(' ')).toEqual([]);
    });
  });

  it('an answer that is late says so without moving; with motion allowed only the signs of the folds turn', async () => {
    await lookAtEach(running.browser, [['']], async (page) => {
      await page.goto(running.server.address);
      await page.getByTestId('sentence').waitFor();
      const durations = () =>
        page.evaluate(() => {
          const summary = document.querySelector('.fold > summary') as Element;
          const stale = document.createElement('p');
          stale.className = 'stale';
          document.querySelector('.answer')?.append(stale);
          const of = [
            getComputedStyle(summary, '::after').transitionDuration,
            getComputedStyle(stale).animationDuration,
          ];
          stale.remove();
          return of;
        });
      expect(await durations()).toEqual(['0s', '0s']);
      await page.emulateMedia({ reducedMotion: 'no-preference' });
      await expect.poll(durations).toEqual(['0.15s', '0.25s']);
    });
  });
});
