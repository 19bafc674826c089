import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sharedWeather } from '../../sharedWeather.ts';
import { codeInSentences, isCommand, linesIn, runnerOf, wholeCommand } from './commands.ts';
import { documents } from './fences.ts';
import { copyProject, type ProjectCopy } from './projectCopy.ts';
import type { Printed } from './running.ts';

/** One test file in place of all, for commands that would run this one again. */
const LIGHT_TEST = 'test/imports.test.ts';

/** What a command is given besides, so that it ends soon, does not run itself, and takes no port of others. */
const BESIDE: Readonly<Record<string, string>> = {
  '.ci/run': LIGHT_TEST,
  'npm test': `-- ${LIGHT_TEST}`,
  'npm run test:fast': `-- ${LIGHT_TEST}`,
  'npm run bench': '-- --small',
  'npm start': '-- --port 0',
};

/** A command as it is run here. */
function asRun(command: string): string {
  const beside = /^npm run bench -- [a-z]/.test(command) ? '--small' : BESIDE[command];
  return beside === undefined ? command : `${command} ${beside}`;
}

/** Commands about the project itself, in blocks and in sentences, each once. */
const commands = [
  ...new Set(
    [
      ...documents().flatMap((document) => linesIn(document)),
      ...codeInSentences()
        .filter(isCommand)
        .map(({ path, code }) => ({ path, code: wholeCommand(code) })),
    ]
      .map(({ code }) => code)
      .filter((command) => runnerOf(command) === 'project'),
  ),
];

const read = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');
const { scripts } = JSON.parse(read('package.json')) as { scripts: Readonly<Record<string, string>> };

/** A line of commands with all that npm runs for it. */
function carriedOut(line: string): string[] {
  return line.split(' && ').flatMap((command) => {
    const [, script] = /^npm (?:run )?([\w:]+)/.exec(command) ?? [];
    const behind = script === 'ci' ? scripts.prepare : scripts[script];
    return [command, ...(behind === undefined ? [] : carriedOut(behind))];
  });
}

/** What the run on a fresh machine carries out has been run when it has. */
const done = read('.ci/run').split('\n').flatMap(carriedOut);
const isDone = (command: string): boolean =>
  done.some((one) => one === command || one.startsWith(`${command} -`));

interface Figure {
  readonly name: string;
  readonly value?: number;
  /** Requests that failed, where a figure counts them. */
  readonly failed?: number;
  /** The statement of the database that an import is measured against. */
  readonly sql?: string;
}

/** Each line that a bench prints is a figure, or says what it was measured against. */
function figuresIn(printed: string): readonly Figure[] {
  const figures = printed
    .split('\n')
    .filter((line) => line.startsWith('{'))
    .map((line) => JSON.parse(line) as Figure);
  expect(figures.length).toBeGreaterThan(1);
  for (const { name, value, sql } of figures)
    expect(Number.isFinite(value) || sql !== undefined, `${name}: ${value}`).toBe(true);
  return figures;
}

/** A soak of seconds cannot tell whether memory grows, and ends with 1 for that; what it must do is answer and judge. */
function judgeShortSoak({ code, out, err }: Printed): void {
  expect([[0, 1].includes(code ?? -1), err]).toEqual([true, expect.not.stringMatching(/\n\s+at /)]);
  const figures = new Map(figuresIn(out).map((figure) => [figure.name, figure]));
  expect(figures.get('soak_answered')).toMatchObject({ failed: 0 });
  expect([...figures.keys()]).toContain('soak_faults');
}

describe('commands about the project itself run in a copy of it', () => {
  let copy: ProjectCopy;
  beforeAll(async () => {
    copy = copyProject();
    const { code, out, err } = await copy.run(`.ci/run ${LIGHT_TEST}`);
    expect([code, code === 0 ? '' : out + err]).toEqual([0, '']);
  }, 1_200_000);
  afterAll(() => copy.leave());

  it('of which the run on a fresh machine has carried out some', () => {
    expect(commands).toContain('.ci/run');
    expect(commands.filter(isDone)).toEqual(
      expect.arrayContaining(['npm ci', 'npm test', 'npm run check', 'npm run build']),
    );
  });

  const others = commands.filter((command) => command !== '.ci/run' && !isDone(command));
  it.each([...new Set(others.map(asRun))])(
    '%s',
    async (command) => {
      const printed = await copy.run(command);
      if (command.startsWith('npm run bench -- soak')) {
        judgeShortSoak(printed);
        return;
      }
      const { code, out, err } = printed;
      if (sharedWeather === null && command.startsWith('UPDATE_TABLE=1 ')) {
        expect([code === 0, out + err]).toEqual([false, expect.stringContaining('needs the real records')]);
        return;
      }
      expect([code, code === 0 ? '' : out + err]).toEqual([0, '']);
      if (command.startsWith('npm run bench')) figuresIn(out);
    },
    600_000,
  );
});
