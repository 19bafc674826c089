import { sharedFolder } from './sharedFolder.ts';

/** Real station records. */
export const { path: sharedWeather, describeWith: describeWithRecords } = sharedFolder(
  'weather',
  'real station records',
);
