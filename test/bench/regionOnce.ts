import { fileURLToPath } from 'node:url';
import { regionRows } from '../../src/app/region.ts';
import { loadCatalogue } from '../../src/catalogue/loadCatalogue.ts';
import { readDataFolder } from '../../src/catalogue/readDataFolder.ts';
import { createBriefReader } from '../../src/store/briefReader.ts';
import { openWorkshop } from '../../src/worker/openWorkshop.ts';

// One region in a process of its own, so that its peak memory is its own: regionOnce.ts FOLDER WORKERS.
const [folder, workers] = process.argv.slice(2);
const catalogue = loadCatalogue(readDataFolder(fileURLToPath(new URL('../../data', import.meta.url))));
const workshop = openWorkshop(catalogue, Number(workers));
const start = performance.now();
let answered = 0;
const question = {
  ...{ residual: 'imazethapyr', crop: 'lentil', interval: '9 months', appliedOn: '2025-08-10' },
  ...{ plantOn: '2026-05-10', asOf: '2025-12-15', assume: { moistureExponent: 0.47 } },
};
for await (const event of regionRows(question, {
  version: '1',
  catalogue,
  weather: createBriefReader(folder),
  workshop,
})) {
  if (event.step === 'end') answered = event.answered;
}
const ms = performance.now() - start;
await workshop.close();
const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
console.log(
  JSON.stringify({ ms, answered, cpuMs: (userCPUTime + systemCPUTime) / 1000, peakMb: maxRSS / 1024 }),
);
