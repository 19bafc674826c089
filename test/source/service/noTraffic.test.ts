import { http, passthrough } from 'msw';
import { expect, it } from 'vitest';
import { realDeps } from '../../../src/cli/realDeps.ts';
import { run } from '../../../src/cli/run.ts';
import { demoQuestion } from '../../../src/demo/demoQuestion.ts';
import { runDrywake } from '../../cli/runDrywake.ts';
import { tempFolder } from '../../tempFolder.ts';
import { useServer } from './fakeService.ts';

const { server, unhandled } = useServer();

it('notices a request that nobody answers', async () => {
  await expect(fetch('https://records.test/anything')).rejects.toThrow();
  expect(unhandled).toEqual(['https://records.test/anything']);
});

it('is not made by odds, list, check and import', async () => {
  const store = tempFolder();
  const odds = ['odds', '--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil'];
  const lines = [
    [...odds, '--applied', '2026-08-14', '--plant', '2027-05-10'],
    ['weather', 'list'],
    ['weather', 'check', 'demo-invented'],
    ['weather', 'import', '--example'],
    ['weather', 'list', '--json'],
  ];
  for (const line of lines) expect((await runDrywake(line, store)).code).toBe(0);
  expect(unhandled).toEqual([]);
});

it('is not made by the server, whatever is asked of it', async () => {
  server.use(http.all(/^http:\/\/127\.0\.0\.1:/, () => passthrough()));
  let stop = () => {};
  const stopped = new Promise<void>((resolve) => {
    stop = resolve;
  });
  let said = (_: string) => {};
  const greeting = new Promise<string>((resolve) => {
    said = resolve;
  });
  const terminal = { out: said, err: () => undefined, interactive: false, colour: false };
  const running = run(
    ['serve', '--port', '0'],
    realDeps(terminal, tempFolder(), () => stopped),
  );
  const address = /http:\S+/.exec(await greeting)?.[0] ?? '';
  const odds = await fetch(`${address}api/odds`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(demoQuestion),
  });
  expect(odds.status).toBe(200);
  for (const path of ['', 'api', 'api/stations', 'api/choices', 'api/example', 'api/health']) {
    expect((await fetch(`${address}${path}`)).status).toBeLessThan(500);
  }
  stop();
  expect(await running).toBe(0);
  expect(unhandled).toEqual([]);
});
