import { createWeatherInbox } from '../../src/app/weatherInbox.ts';

const refuse = async () => {
  throw new Error('This test sends no files.');
};

/** What the routes need of the outside, where a test needs none of it. */
export const noOutside = {
  inbox: createWeatherInbox({
    receive: refuse,
    stationLists: refuse,
    weatherFiles: refuse,
    importStore: refuse,
  }),
  counties: async () => [],
};
