import { importWeather } from '../../src/app/importWeather.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';

// An import as a program of its own: importChild.ts FOLDER FILE… says "open", then the outcome of each file.
const [folder, ...paths] = process.argv.slice(2);
const input = await findRecordFiles(paths);
const store = await openWeatherStore(folder, { mode: 'write', files: paths, waitMs: 5000 });
process.stdout.write('open\n');
await importWeather(input, store, {
  passOverUnchanged: true,
  onProgress: ({ file }) => process.stdout.write(`${file.source} ${file.outcome}\n`),
});
await store.close();
