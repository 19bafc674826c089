import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { bareStatement, MEMORY_LIMIT } from './bareStatement.ts';

// One import in a process of its own, so that its peak memory is its own: ingestOnce.ts bare|store FILE FOLDER.
const [way, path, folder] = process.argv.slice(2);
const start = performance.now();
if (way === 'bare') {
  const instance = await DuckDBInstance.create(join(folder, 'bare.duckdb'), { memory_limit: MEMORY_LIMIT });
  const connection = await instance.connect();
  await connection.run(bareStatement(path));
  connection.closeSync();
  instance.closeSync();
} else {
  const store = await openWeatherStore(folder, { mode: 'write', files: [path] });
  const { outcome } = await store.importFile(path);
  if (outcome !== 'imported') throw new Error(`${path} was ${outcome}`);
  await store.close();
}
const ms = performance.now() - start;
const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
console.log(JSON.stringify({ ms, cpuMs: (userCPUTime + systemCPUTime) / 1000, peakMb: maxRSS / 1024 }));
