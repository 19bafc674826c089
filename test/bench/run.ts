import { BENCHES } from './benches.ts';

/**
 * Prints one JSON line per figure; nothing here gates a test.
 *
 * `npm run bench` takes all but the import; `npm run bench -- steps | answer | comparisons | many | http` one of them:
 * the daily step against C, answers cold and warm, a region and a list of fields over a generated store
 * `[--stations n] [--years n] [--rows n] [--workers n] [--folder path]`, answers over loopback `[--seconds n] [--half-seconds n]`.
 * `npm run bench -- soak [--minutes n]` keeps the server under half of its load for ten minutes.
 * `npm run bench -- ingest [--rows n] [--rounds n] [--store-rows n] [--folder path]` times imports against a bare
 * statement of the database, and one station's read. Answers and loopback run the built program.
 */
const [what = 'all', ...flags] = process.argv.slice(2);
if (what === 'all') {
  for (const name of ['steps', 'answer', 'comparisons', 'many', 'http']) await BENCHES[name]([]);
} else if (what in BENCHES) {
  await BENCHES[what](flags);
} else {
  console.error(`There is no bench "${what}"; there are: ${Object.keys(BENCHES).join(', ')}.`);
  process.exitCode = 2;
}
