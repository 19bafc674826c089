import { describe, expect, it } from 'vitest';
import { answerSchema } from '../../src/schema/answer.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { tempFolder } from '../tempFolder.ts';
import { runBuilt, startBuilt } from './builtProgram.ts';

const DEMO = [
  ...['odds', '--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil'],
  ...['--applied', '2026-08-14', '--plant', '2027-05-10', '--as-of', '2026-09-30'],
];

describe('the built program', () => {
  it('answers the demo from any folder, with no store and no network', () => {
    const { code, out, ms } = runBuilt(DEMO, `${tempFolder()}/none`);
    expect(code).toBe(0);
    expect(out).toMatch(/^In about \d+ in 20/);
    console.log(`cold answer on the embedded 60-year record: ${Math.round(ms)} ms`);
  });

  it('says what is wrong without a stack, and ends with 2', () => {
    const { code, out, err } = runBuilt([...DEMO, '--crop', 'lentl'], tempFolder());
    expect([code, out]).toEqual([2, '']);
    expect(err).toBe('The catalogue has no crop "lentl".\nDid you mean lentil?\n');
  });

  it('has help with an example for every command', () => {
    for (const argv of [
      ['odds'],
      ['weather'],
      ['weather', 'import'],
      ['weather', 'list'],
      ['weather', 'check'],
      ['serve'],
    ]) {
      const { code, out } = runBuilt([...argv, '--help'], tempFolder());
      expect(code).toBe(0);
      if (argv.join() !== 'weather') expect(out).toContain('Example');
    }
    expect(runBuilt(['--version'], tempFolder()).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  it('serves, answers as the command line does, refuses a taken port, and stops when asked', async () => {
    const store = tempFolder();
    const server = await startBuilt(store);
    try {
      // The runs below hold up this process, which would not see an idle connection being closed.
      const once = { connection: 'close' };
      const { question } = await (await fetch(`${server.address}api/example`, { headers: once })).json();
      const response = await fetch(`${server.address}api/odds`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', ...once },
        body: JSON.stringify(question),
      });
      const answer = answerSchema.parse(await response.json());
      expect(answer).toEqual(
        answerSchema.parse(JSON.parse(runBuilt([...DEMO, '--soil', 'loam', '--json'], store).out)),
      );
      const port = new URL(server.address).port;
      const second = runBuilt(['serve', '--port', port], tempFolder());
      expect(second.code).toBe(1);
      expect(second.err).toContain(`Port ${port} is taken`);
      const sameFolder = runBuilt(['serve', '--port', '0'], store);
      expect(sameFolder.code).toBe(1);
      expect(sameFolder.err).toContain(`its page is at ${server.address}`);
      const page = await fetch(server.address);
      expect(page.headers.get('content-type')).toContain('text/html');
      expect(page.headers.get('content-security-policy')).toContain("default-src 'self'");
    } finally {
      expect(await server.stop()).toBe(0);
    }
  });
});

describeWithRecords('the built program on a 130-year file', (folder) => {
  it('gives the cross-check answer', () => {
    const times = [0, 1, 2].map(() => {
      const { out, ms } = runBuilt(
        [
          ...[
            'odds',
            '--weather',
            `${folder}/derived/USC00241044.dly.gz`,
            '--station',
            'USC00241044',
            '--lat',
            '45.662',
          ],
          ...['--residual', 'imazethapyr', '--half-life', '60', '--crop', 'lentil', '--interval', '9 months'],
          ...['--applied', '2020-08-10', '--plant', '2021-05-10', '--base', '1981-2018', '--json'],
        ],
        tempFolder(),
      );
      const { oddsAtPlanting, clearDate } = answerSchema.parse(JSON.parse(out));
      expect(Math.abs((oddsAtPlanting ?? 0) - 0.2912)).toBeLessThan(0.002);
      expect(clearDate).toBe('2021-06-18');
      return ms;
    });
    console.log(`cold answer on the 130-year file: ${times.map((ms) => Math.round(ms)).join(', ')} ms`);
  });
});
