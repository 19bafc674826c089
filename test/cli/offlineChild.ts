import dns from 'node:dns';
import { Socket } from 'node:net';
import { realDeps } from '../../src/cli/realDeps.ts';
import { run } from '../../src/cli/run.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';

// Runs commands and a server where the network is refused: offlineChild.ts FOLDER prints as JSON what was tried.
const [folder] = process.argv.slice(2);
const tried: string[] = [];
const codes: Record<string, number> = {};

const connect = Socket.prototype.connect as (...given: unknown[]) => Socket;
Socket.prototype.connect = function (this: Socket, ...given: unknown[]) {
  const [options] = [given[0]].flat() as [{ host?: string; path?: string }];
  const host = options?.host ?? '';
  if (options?.path !== undefined || host === '127.0.0.1') return connect.apply(this, given);
  tried.push(host);
  setTimeout(() => this.destroy(new Error('The network is refused.')), 20);
  return this;
} as typeof Socket.prototype.connect;
const lookup = dns.lookup as (...given: unknown[]) => void;
dns.lookup = ((name: string, ...rest: unknown[]) => {
  if (name === '127.0.0.1') return lookup(name, ...rest);
  tried.push(name);
  (rest[rest.length - 1] as (error: Error) => void)(new Error('The network is refused.'));
}) as typeof dns.lookup;

async function command(
  line: readonly string[],
  stopped = async () => {},
  out = (_: string) => {},
): Promise<void> {
  const terminal = { out, err: () => undefined, interactive: false, colour: false };
  codes[line.join(' ')] = await run(line, realDeps(terminal, folder, stopped));
}

const season = ['--station', 'demo-invented', '--applied', '2026-08-14'];
const crop = ['--crop', 'lentil', '--plant', '2027-05-10'];
for (const line of [
  ['odds', ...season, ...crop, '--residual', 'flumioxazin'],
  ['compare', ...season, ...crop],
  ['weather', 'import', '--example'],
  ['weather', 'list'],
  ['weather', 'near', '--lat', '46', '--lon=-117'],
  ['region', '--applied', '2026-08-14', ...crop, '--residual', 'flumioxazin'],
  ['fields', 'list'],
  ['labels', 'list'],
  ['refresh'],
  ['catalogue', 'list'],
  ['--help'],
]) {
  await command(line);
}

let address = '';
let stop = () => {};
const stopped = new Promise<void>((resolve) => {
  stop = resolve;
});
const listening = new Promise<void>((resolve) => {
  void command(
    ['serve', '--port', '0'],
    () => stopped,
    (text) => {
      address = /http:\S+/.exec(text)?.[0] ?? '';
      resolve();
    },
  );
});
await listening;
const answered: number[] = [];
for (const path of [
  '',
  'api',
  'api/health',
  'api/stations',
  'api/choices',
  'api/fields',
  'api/openapi.json',
]) {
  answered.push((await fetch(`${address}${path}`)).status);
}
const odds = {
  method: 'POST',
  body: JSON.stringify(demoQuestion),
  headers: { 'content-type': 'application/json' },
};
answered.push((await fetch(`${address}api/odds`, odds)).status);
stop();
const before = [...tried];
// The one thing that asks the outside, on request.
await command(['weather', 'fetch', 'USC00241044']);
process.stdout.write(JSON.stringify({ codes, answered, before, after: tried.slice(before.length) }));
process.exit();
