import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { tempFolder } from '../tempFolder.ts';
import { runBuilt } from './builtProgram.ts';

const README = new URL('../../README.md', import.meta.url);

/** The first block that shows a command with its output. */
const SHOWN = /```\n\$ npx drywake (?<command>(?:.*\\\n)*.*)\n(?<output>[\s\S]*?)\n```/;

it('the README shows what the program prints (UPDATE_README=1 rewrites it)', () => {
  const text = readFileSync(README, 'utf8');
  const { command = '', output = '' } = SHOWN.exec(text)?.groups ?? {};
  const argv = command.replaceAll('\\\n', ' ').trim().split(/\s+/);
  expect(argv[0]).toBe('odds');
  const { code, out } = runBuilt(argv, tempFolder());
  expect(code).toBe(0);
  const printed = out.trimEnd();
  if (process.env.UPDATE_README)
    writeFileSync(
      README,
      text.replace(output, () => printed),
    );
  else expect(output).toBe(printed);
});
