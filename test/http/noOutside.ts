import { createWeatherInbox } from '../../src/app/weatherInbox.ts';

const refuse = async () => {
  throw new Error('This test needs nothing of the outside.');
};

const noShelf = {
  list: async () => ({ kept: [], removed: [] }),
  count: async () => 0,
  get: refuse,
  put: refuse,
  remove: refuse,
  undo: refuse,
};

/** What the routes need of the outside, where a test needs none of it. */
export const noOutside = {
  inbox: createWeatherInbox({
    receive: refuse,
    stationLists: refuse,
    weatherFiles: refuse,
    importStore: refuse,
  }),
  desk: {
    ...{ fields: noShelf, labels: noShelf, answers: refuse, applicationRecord: refuse, sheet: refuse },
    ...{ refresh: refuse, backup: refuse, restore: refuse },
  },
  counties: async () => [],
  clock: () => '2026-09-30T12:34:56.000Z',
};
