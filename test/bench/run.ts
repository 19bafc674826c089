import { BENCHES } from './benches.ts';

/**
 * Prints one JSON line per figure; nothing here gates a test.
 *
 * `npm run bench` takes all but the import and the soak; `npm run bench -- steps | answer | comparisons | many | http` one of
 * them: the daily step against C, answers cold and warm, a region and a list of fields over a generated store
 * `[--stations n] [--years n] [--rows n] [--workers n] [--folder path]`, answers over loopback `[--seconds n] [--half-seconds n]`.
 * `npm run bench -- soak [--minutes n]` keeps the server under half of its load for ten minutes and
 * ends with 1 where it does not stay as it was.
 * `npm run bench -- ingest [--rows n] [--rounds n] [--store-rows n] [--folder path]` times imports against a bare
 * statement of the database, and one station's read. Answers and loopback run the built program. `--small` ends any of
 * them in seconds: a quick look at whether it works, whose figures mean nothing.
 */
const given = process.argv.slice(2);
const [what, flags] = given[0]?.startsWith('--') === false ? [given[0], given.slice(1)] : ['all', given];
if (what === 'all') {
  for (const name of ['steps', 'answer', 'comparisons', 'many', 'http']) await BENCHES[name](flags);
} else if (what in BENCHES) {
  await BENCHES[what](flags);
} else {
  console.error(`There is no bench "${what}"; there are: ${Object.keys(BENCHES).join(', ')}.`);
  process.exitCode = 2;
}
