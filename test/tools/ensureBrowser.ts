import { ensureBrowser } from './findBrowser.ts';

try {
  console.log(`Browser tests run in ${ensureBrowser()}`);
} catch (error) {
  console.error((error as Error).message);
  process.exitCode = 1;
}
