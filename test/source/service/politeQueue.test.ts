import { expect, it } from 'vitest';
import { PoliteQueue } from '../../../src/source/service/politeQueue.ts';
import { fakeClock } from './fakeService.ts';

it('never runs more at a time than allowed, in the order of asking, also past failures', async () => {
  const queue = new PoliteQueue({ mostAtOnce: 3, spacingMs: 0, clock: fakeClock() });
  let running = 0;
  let most = 0;
  const begun: number[] = [];
  const work = Array.from({ length: 20 }, (_, index) =>
    queue.run(async () => {
      begun.push(index);
      most = Math.max(most, ++running);
      for (let turn = 0; turn <= index % 4; turn++) await new Promise(setImmediate);
      running--;
      if (index % 5 === 0) throw new Error(`number ${index}`);
      return index;
    }),
  );
  const settled = await Promise.allSettled(work);
  expect(most).toBe(3);
  expect(begun).toEqual(Array.from({ length: 20 }, (_, index) => index));
  expect(settled.filter(({ status }) => status === 'rejected')).toHaveLength(4);
});

it('spaces requests, and keeps all of them back when asked to', async () => {
  const clock = fakeClock();
  const queue = new PoliteQueue({ mostAtOnce: 2, spacingMs: 250, clock });
  await queue.turn();
  await queue.turn();
  await queue.turn();
  expect(clock.waits).toEqual([250, 250]);
  queue.holdOff(10_000);
  await queue.turn();
  expect(clock.waits.at(-1)).toBe(10_000);
});
