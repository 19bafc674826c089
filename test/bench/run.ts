/**
 * Prints one JSON line per figure; nothing here gates a test.
 *
 * `npm run bench` times answers and comparisons (`-- comparisons` those alone); `npm run bench -- ingest [--rows n] [--rounds n] [--store-rows n] [--folder path]`
 * times imports against a bare statement of the database, and one station's read.
 */
const [what = 'answer', ...flags] = process.argv.slice(2);
switch (what) {
  case 'answer':
    await (await import('./answer.ts')).benchAnswer();
    await (await import('./comparisons.ts')).benchComparisons();
    break;
  case 'comparisons':
    await (await import('./comparisons.ts')).benchComparisons();
    break;
  case 'ingest':
    await (await import('./ingest.ts')).benchIngest(flags);
    break;
  default:
    console.error(`There is no bench "${what}"; there are: answer, comparisons, ingest.`);
    process.exitCode = 2;
}

export {};
