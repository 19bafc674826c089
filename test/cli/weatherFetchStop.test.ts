import { spawn } from 'node:child_process';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { expect, it, onTestFinished } from 'vitest';
import { recordGz, stationLine } from '../source/service/fakeService.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const IDS = ['TST00000001', 'TST00000002', 'TST00000003'];

/** A service that sends the first station's record at once and never ends the others'. */
async function halfDeadService(): Promise<string> {
  const server = createServer(({ url = '' }, response) => {
    if (url.endsWith('ghcnd-stations.txt')) {
      response.end(IDS.map((id) => stationLine(id, 45, -111, 'MT', id)).join(''));
    } else if (url.includes(IDS[0])) {
      response.end(recordGz(20, IDS[0]));
    } else {
      response.write('x');
    }
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}

it('keeps what is finished when Ctrl-C is pressed, says so and ends', async () => {
  const store = tempFolder();
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', 'weather', 'fetch', ...IDS], {
    cwd: root,
    env: { ...process.env, DRYWAKE_HOME: store, DRYWAKE_RECORDS: await halfDeadService() },
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  let err = '';
  child.stderr.on('data', (piece) => {
    const before = err;
    err += piece;
    if (!before.includes('[1/3]') && err.includes('[1/3]')) child.kill('SIGINT');
  });
  const code = await new Promise((resolve) => child.on('close', resolve));
  expect(err).toContain('[1/3] TST00000001.csv.gz: TST00000001, 2001-01-01 to 2001-01-20; 20 values new');
  expect(err).toContain('Stopped after 1 of 3; what is finished is in the store.');
  expect(code).toBe(1);
  const { out } = await runDrywake(['weather', 'list', '--json'], store);
  expect(JSON.parse(out).stations.map(({ id }: { id: string }) => id)).toContain(IDS[0]);
});
