import { readFileSync } from 'node:fs';

const IGNORED = readFileSync(new URL('../../../.gitignore', import.meta.url), 'utf8')
  .trim()
  .split('\n');
const NAMES = new Set(['.git', ...IGNORED.map((line) => line.replace(/\/$/, ''))]);
const ENDINGS = IGNORED.filter((line) => line.startsWith('*')).map((line) => line.slice(1));

/** Whether a file or folder of that name is made by installing, building or testing, or is the history: none of it is fresh. */
export const isMade = (name: string): boolean =>
  NAMES.has(name) || ENDINGS.some((ending) => name.endsWith(ending));
