import { expect, it } from 'vitest';
import { goToPlace, LOOK_BACK, type Place } from './atPlace.ts';
import { lookAtEach } from './lookAtEach.ts';
import { beyondPaper } from './printedPages.ts';
import { served } from './served.ts';

const running = served();

/** Places without a print test of their own, with what stands there once the server has answered. */
const PLACES: readonly Place[] = [
  ['', 'dots'],
  LOOK_BACK,
  ['fields', 'demo-field'],
  ['labels', 'label-count'],
  ['weather', 'station-count'],
  ['weather?at=45.7,-111', 'near'],
  ['weather?station=demo-invented', 'worth'],
  ['catalogue?crop=lentil', 'ladder'],
  ['catalogue/imazamox', 'figures'],
  ['catalogue/imazamox?crop=canola', 'pair-interval'],
];

it('every place fits the width of letter and of A4', async () => {
  await lookAtEach(running.browser, PLACES, async (page, place) => {
    await goToPlace(page, running.server.address, place);
    await page.waitForLoadState('networkidle');
    for (const format of ['Letter', 'A4'] as const) {
      await expect
        .poll(() => beyondPaper(page, format), { message: `${place.join(' ')}, ${format}` })
        .toEqual([]);
    }
  });
});
