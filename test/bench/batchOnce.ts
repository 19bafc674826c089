import { fileURLToPath } from 'node:url';
import { batch } from '../../src/app/batch.ts';
import { readFieldList } from '../../src/app/fieldList.ts';
import { loadCatalogue } from '../../src/catalogue/loadCatalogue.ts';
import { readDataFolder } from '../../src/catalogue/readDataFolder.ts';
import { createBriefReader } from '../../src/store/briefReader.ts';
import { openWorkshop } from '../../src/worker/openWorkshop.ts';

// One list of fields in a process of its own: batchOnce.ts FOLDER ROWS STATIONS WORKERS.
const [folder, rows, stations, workers] = process.argv.slice(2);
const catalogue = loadCatalogue(readDataFolder(fileURLToPath(new URL('../../data', import.meta.url))));
const workshop = openWorkshop(catalogue, Number(workers));
const SOILS = ['loam', 'clay loam', 'silt loam', 'sandy loam'];
const day = (n: number) => String(1 + (n % 28)).padStart(2, '0');
const lines = Array.from({ length: Number(rows) }, (_, row) => {
  const station = `GEN${String(row % Number(stations)).padStart(8, '0')}`;
  const asOf = row % 2 === 0 ? '2025-12-15' : '';
  return `Field ${row},${20 + (row % 300)},${station},${SOILS[row % 4]},imazethapyr,lentil,9 months,2025-08-${day(row)},2026-05-${day(row * 5)},${asOf}`;
});
const text = [
  'field,acres,station,soil_class,residual,crop,interval,applied_on,plant_on,as_of',
  ...lines,
].join('\n');
const start = performance.now();
const result = await batch(
  readFieldList(text, 'generated.csv'),
  {},
  {
    version: 'bench',
    catalogue,
    weather: createBriefReader(folder),
    workshop,
  },
);
const ms = performance.now() - start;
await workshop.close();
const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
console.log(
  JSON.stringify({
    ms,
    answered: result.answered,
    cpuMs: (userCPUTime + systemCPUTime) / 1000,
    peakMb: maxRSS / 1024,
  }),
);
